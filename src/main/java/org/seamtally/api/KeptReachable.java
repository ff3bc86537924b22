package org.seamtally.api;

import io.smallrye.health.api.HealthGroup;
import jakarta.enterprise.context.ApplicationScoped;
import org.eclipse.microprofile.health.HealthCheck;
import org.eclipse.microprofile.health.HealthCheckResponse;
import org.seamtally.batch.Batches;
import org.seamtally.kept.UnavailableException;

/**
 * Whether what is kept can be reached: at {@code /q/health/group/kept}. It is not part of being ready, for estimates are
 * worked out without it, and a service that is taken out of use for want of a database would answer none.
 */
@HealthGroup("kept")
@ApplicationScoped
public class KeptReachable implements HealthCheck {

    private final Batches batches;

    KeptReachable(Batches batches) {
        this.batches = batches;
    }

    @Override
    public HealthCheckResponse call() {
        try {
            batches.list(Shop.LOCAL, 1, null);
            return HealthCheckResponse.up("kept");
        } catch (UnavailableException e) {
            return HealthCheckResponse.named("kept")
                    .down()
                    .withData("reason", e.getMessage())
                    .build();
        }
    }
}

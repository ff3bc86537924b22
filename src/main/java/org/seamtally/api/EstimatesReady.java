package org.seamtally.api;

import jakarta.enterprise.context.ApplicationScoped;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import org.eclipse.microprofile.health.HealthCheck;
import org.eclipse.microprofile.health.HealthCheckResponse;
import org.eclipse.microprofile.health.Readiness;
import org.seamtally.quantity.UnitSystem;
import org.seamtally.wire.Engine;
import org.seamtally.wire.Outcome;

/** Ready once one small joint has been worked out. */
@Readiness
@ApplicationScoped
public class EstimatesReady implements HealthCheck {

    private static final byte[] JOINT =
            "{\"joint\": {\"kind\": \"plug\", \"holeDiameter\": \"6 mm\", \"depth\": \"2 mm\"}}"
                    .getBytes(StandardCharsets.UTF_8);

    private final Engine engine;

    EstimatesReady(Engine engine) {
        this.engine = engine;
    }

    @Override
    public HealthCheckResponse call() {
        try {
            boolean works =
                    engine.deposit(new ByteArrayInputStream(JOINT), UnitSystem.SI) instanceof Outcome.Answered<?>;
            return HealthCheckResponse.named("estimates").status(works).build();
        } catch (IOException e) {
            return HealthCheckResponse.down("estimates");
        }
    }
}

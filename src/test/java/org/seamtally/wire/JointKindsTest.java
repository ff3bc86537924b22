package org.seamtally.wire;

import static org.junit.jupiter.api.Assertions.assertEquals;

import com.fasterxml.jackson.annotation.JsonSubTypes;
import java.util.Arrays;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.seamtally.seam.Joint;

/** A kind of joint is named in four places; they agree. */
class JointKindsTest {

    @Test
    void theSealedRequestsTheSubtypesTheJointsAndTheListAreTheSameKinds() {
        Set<Class<?>> permitted = Set.of(JointRequest.class.getPermittedSubclasses());
        JsonSubTypes.Type[] subtypes =
                JointRequest.class.getAnnotation(JsonSubTypes.class).value();
        assertEquals(
                permitted,
                Set.of(Arrays.stream(subtypes).map(JsonSubTypes.Type::value).toArray()));
        assertEquals(permitted, Set.copyOf(JointKinds.classes()));
        assertEquals(Arrays.stream(subtypes).map(JsonSubTypes.Type::name).toList(), JointKinds.names());
        assertEquals(Joint.class.getPermittedSubclasses().length, subtypes.length);
        List<String> requests = permitted.stream()
                .map(type -> type.getSimpleName().replace("Request", ""))
                .sorted()
                .toList();
        assertEquals(
                Arrays.stream(Joint.class.getPermittedSubclasses())
                        .map(Class::getSimpleName)
                        .sorted()
                        .toList(),
                requests);
    }

    @Test
    void eachIsCalledByTheNameItIsReadBy() {
        for (int i = 0; i < JointKinds.names().size(); i++) {
            assertEquals(
                    JointKinds.names().get(i),
                    JointKinds.nameOf(JointKinds.classes().get(i)));
        }
    }
}

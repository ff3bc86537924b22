package org.seamtally.wire;

import java.lang.reflect.RecordComponent;
import java.util.function.BiConsumer;

/** The quantities of an answer by their paths, read off its records: whatever is answered is added up. */
final class AnswerQuantities {

    private static final ClassValue<RecordComponent[]> COMPONENTS = new ClassValue<>() {
        @Override
        protected RecordComponent[] computeValue(Class<?> type) {
            return type.getRecordComponents();
        }
    };

    private AnswerQuantities() {}

    /** Visits every quantity of a record and of the records in it; lists are left out. */
    static void each(String path, Record answer, BiConsumer<String, Quantity> visitor) {
        for (RecordComponent component : COMPONENTS.get(answer.getClass())) {
            Object value = value(component, answer);
            String inner = path + "." + component.getName();
            if (value instanceof Quantity quantity) {
                visitor.accept(inner, quantity);
            } else if (value instanceof Record part) {
                each(inner, part, visitor);
            }
        }
    }

    private static Object value(RecordComponent component, Record answer) {
        try {
            return component.getAccessor().invoke(answer);
        } catch (ReflectiveOperationException e) {
            throw new IllegalStateException("an answer's records are public", e);
        }
    }
}

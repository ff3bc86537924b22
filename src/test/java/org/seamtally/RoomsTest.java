package org.seamtally;

import static com.tngtech.archunit.core.domain.JavaClass.Predicates.resideInAPackage;
import static com.tngtech.archunit.core.domain.JavaClass.Predicates.resideInAnyPackage;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.classes;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static org.junit.jupiter.api.Assertions.assertEquals;

import com.tngtech.archunit.base.DescribedPredicate;
import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import java.util.Arrays;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.MethodSource;
import org.seamtally.seam.Joint;

/** Which room may import which, and which libraries: the table in DEVELOPERS.md, kept. */
class RoomsTest {

    private static final JavaClasses MAIN = new ClassFileImporter()
            .withImportOption(ImportOption.Predefined.DO_NOT_INCLUDE_TESTS)
            .importPackages("org.seamtally");

    private static final String ROOT = "org.seamtally.";

    /** The rooms, from the ground up. */
    enum Room {
        QUANTITY("it is what everything else speaks of", List.of()),
        CATALOGUE("tables name quantities and nothing else", List.of(QUANTITY)),
        SEAM("geometry knows no arc, gas or money", List.of(QUANTITY, CATALOGUE)),
        METAL("metallurgy knows no geometry: it is given zones and shares", List.of(QUANTITY, CATALOGUE)),
        ARC("the arc follows the seam", List.of(QUANTITY, CATALOGUE, SEAM)),
        GAS("the gas knows starts and times, not joints", List.of(QUANTITY, CATALOGUE)),
        PREHEAT("heat goes into a joint's members", List.of(QUANTITY, CATALOGUE, SEAM, METAL)),
        FRAME("it puts the rooms below together", List.of(QUANTITY, CATALOGUE, SEAM, METAL, ARC, GAS, PREHEAT)),
        KEPT("it is what all that is kept has in common", List.of()),
        QUOTE("a quote is a frame's estimate that is kept", List.of(FRAME, KEPT)),
        WIRE(
                "it maps between text and every room below",
                List.of(QUANTITY, CATALOGUE, SEAM, METAL, ARC, GAS, PREHEAT, FRAME, KEPT, QUOTE)),
        BATCH("it runs the one entry over many frames, and knows of no database", List.of(QUANTITY, KEPT, WIRE)),
        STORE("it keeps what others define, and knows no HTTP", List.of(KEPT, QUOTE, WIRE, BATCH)),
        PAGE("what people read is filled from answers", List.of(WIRE, QUOTE, FRAME)),
        API(
                "it may map anything, and computes nothing",
                List.of(
                        QUANTITY, CATALOGUE, SEAM, METAL, ARC, GAS, PREHEAT, FRAME, KEPT, QUOTE, WIRE, BATCH, STORE,
                        PAGE)),
        CLI(
                "it prints what the one entry answers, in the units asked for, and opens no database",
                List.of(QUANTITY, FRAME, WIRE, BATCH));

        private final String because;
        private final List<Room> imports;

        Room(String because, List<Room> imports) {
            this.because = because;
            this.imports = imports;
        }

        String inside() {
            return ROOT + name().toLowerCase(java.util.Locale.ROOT) + "..";
        }
    }

    @ParameterizedTest
    @EnumSource
    void aRoomImportsOnlyTheRoomsItsRowAllows(Room room) {
        String[] forbidden = Arrays.stream(Room.values())
                .filter(other -> other != room && !room.imports.contains(other))
                .map(Room::inside)
                .toArray(String[]::new);
        noClasses()
                .that()
                .resideInAPackage(room.inside())
                .should()
                .dependOnClassesThat()
                .resideInAnyPackage(forbidden)
                .because(room.because)
                .check(MAIN);
    }

    @Test
    void everyClassLivesInARoomOfTheTable() {
        String[] rooms = Arrays.stream(Room.values()).map(Room::inside).toArray(String[]::new);
        classes()
                .should()
                .resideInAnyPackage(rooms)
                .because("a class outside the table would be bound by no rule")
                .check(MAIN);
    }

    @ParameterizedTest
    @EnumSource(names = {"QUANTITY", "CATALOGUE", "SEAM", "METAL", "ARC", "GAS", "PREHEAT", "FRAME"})
    void computingRoomsKnowNoFrameworkNoClockAndNoWorldOutside(Room room) {
        noClasses()
                .that()
                .resideInAPackage(room.inside())
                .should()
                .dependOnClassesThat(resideInAnyPackage(
                                "jakarta..",
                                "io.quarkus..",
                                "com.fasterxml..",
                                "org.eclipse.microprofile..",
                                "org.hibernate..",
                                "picocli..",
                                "java.time..",
                                "java.nio.file..",
                                "java.net..",
                                "java.sql..")
                        .or(DescribedPredicate.describe(
                                "are random",
                                (JavaClass type) -> type.getName().matches("java\\.util\\.(Random|UUID).*"))))
                .because("what computes gives the same answer anywhere, at any time")
                .check(MAIN);
    }

    @ParameterizedTest
    @EnumSource(names = {"SEAM", "METAL", "ARC", "GAS", "PREHEAT", "FRAME"})
    void onlyTheCatalogueReadsResources(Room room) {
        noClasses()
                .that()
                .resideInAPackage(room.inside())
                .should()
                .dependOnClassesThat(resideInAPackage("java.io.."))
                .because("a room's input is what it is called with")
                .check(MAIN);
    }

    @Test
    void theWireKnowsJacksonValidationAndOpenApiAnnotationsOnly() {
        noClasses()
                .that()
                .resideInAPackage(Room.WIRE.inside())
                .should()
                .dependOnClassesThat()
                .resideInAnyPackage(
                        "io.quarkus..", "jakarta.ws..", "jakarta.inject..", "jakarta.enterprise..", "picocli..")
                .because("batch and shell read and write the same records without a server")
                .check(MAIN);
    }

    static Stream<Class<?>> kinds() {
        return Arrays.stream(Joint.class.getPermittedSubclasses());
    }

    @ParameterizedTest
    @MethodSource("kinds")
    void nothingNamesAConcreteKindButItsRegistrationAndItsWireRecord(Class<?> kind) {
        Set<String> allowed =
                Set.of(kind.getName(), Joint.class.getName(), ROOT + "wire." + kind.getSimpleName() + "Request");
        Set<String> naming = MAIN.get(kind).getDirectDependenciesToSelf().stream()
                .map(dependency -> dependency.getOriginClass().getName())
                .filter(name -> !allowed.contains(name.replaceAll("\\$.*", "")))
                .collect(Collectors.toCollection(TreeSet::new));
        assertEquals(Set.of(), naming, "adding a kind is one class, its test, its wire record and their registration");
    }

    @Test
    void namesSayWhatAClassIs() {
        noClasses()
                .should()
                .haveNameMatching(".*(Util|Utils|Helper|Manager|Impl)")
                .because("a name says what a class is, in the words of the trade")
                .check(MAIN);
    }
}

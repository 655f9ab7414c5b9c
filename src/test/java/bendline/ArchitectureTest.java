package bendline;

import static com.tngtech.archunit.base.DescribedPredicate.describe;
import static com.tngtech.archunit.core.domain.JavaClass.Predicates.resideInAPackage;
import static com.tngtech.archunit.core.domain.JavaClass.Predicates.resideOutsideOfPackage;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.classes;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.methods;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static com.tngtech.archunit.library.dependencies.SlicesRuleDefinition.slices;
import static org.assertj.core.api.Assertions.assertThat;

import bendline.Rooms.Row;
import com.tngtech.archunit.base.DescribedPredicate;
import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.domain.JavaPackage;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import com.tngtech.archunit.library.GeneralCodingRules;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Stream;
import org.jspecify.annotations.NullMarked;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;

/** Holds the tables of DEVELOPERS.md and the rules of the house that can be read off the compiled classes. */
class ArchitectureTest {

    private static final String ROOT = "bendline";

    private static JavaClasses ours;
    private static Rooms rooms;

    @BeforeAll
    static void readClassesAndTables() throws IOException {
        ours = new ClassFileImporter()
                .withImportOption(new ImportOption.DoNotIncludeTests())
                .importPackages(ROOT);
        rooms = Rooms.read(Path.of("DEVELOPERS.md"));
    }

    @Test
    void theTablesAreFound() {
        assertThat(ours.size()).isGreaterThan(20);
        assertThat(rooms.packages()).hasSizeGreaterThan(10);
        assertThat(rooms.libraries()).containsKey("org.bytedeco");
    }

    @TestFactory
    Stream<DynamicTest> aPackageUsesOnlyTheRowsItNames() {
        return rooms.packages().entrySet().stream()
                .map(row -> DynamicTest.dynamicTest(
                        row.getKey(),
                        () -> classes()
                                .that()
                                .resideInAPackage(row.getKey())
                                .should()
                                .onlyDependOnClassesThat(allowed(row.getKey(), row.getValue()))
                                .because("DEVELOPERS.md says what " + row.getKey() + " may use")
                                .allowEmptyShould(true)
                                .check(ours)));
    }

    private static DescribedPredicate<JavaClass> allowed(String itself, Row row) {
        DescribedPredicate<JavaClass> rule = resideOutsideOfPackage(ROOT + "..").or(resideInAPackage(itself));
        for (String other : row.whole()) {
            rule = rule.or(resideInAPackage(other));
        }
        for (String other : row.data()) {
            rule = rule.or(resideInAPackage(other).and(describe("data", ArchitectureTest::isData)));
        }
        return rule.as("are outside, its own, or of " + row);
    }

    private static boolean isData(JavaClass c) {
        return c.isRecord() || c.isEnum() || c.isInterface() || c.isAssignableTo(Throwable.class);
    }

    @Test
    void rowsNameOnlyRowsAboveThem() {
        Set<String> above = new HashSet<>();
        rooms.packages().forEach((name, row) -> {
            assertThat(above).as("above " + name).containsAll(row.whole()).containsAll(row.data());
            above.add(name);
        });
    }

    @Test
    void everyPackageHasARow() {
        Set<String> found = new TreeSet<>();
        ours.forEach(c -> found.add(c.getPackageName()));
        assertThat(rooms.packages().keySet()).containsAll(found);
    }

    @Test
    void noCycleEvenBetweenAPackageAndItsChild() {
        slices().matching(ROOT + ".(**)").should().beFreeOfCycles().check(ours);
    }

    @TestFactory
    Stream<DynamicTest> aLibraryIsUsedOnlyWhereItsRowSays() {
        return rooms.libraries().entrySet().stream()
                .map(row -> DynamicTest.dynamicTest(
                        row.getKey(),
                        () -> noClasses()
                                .that()
                                .resideOutsideOfPackages(row.getValue().toArray(String[]::new))
                                .should()
                                .dependOnClassesThat()
                                .resideInAPackage(row.getKey() + "..")
                                .because("DEVELOPERS.md keeps it to " + row.getValue())
                                .check(ours)));
    }

    @Test
    void nativeMemoryIsNotHandedOut() {
        methods()
                .that()
                .arePublic()
                .and()
                .areDeclaredInClassesThat()
                .arePublic()
                .should()
                .notHaveRawReturnType(resideInAPackage("org.bytedeco.."))
                .because("whoever makes native memory frees it; it may be lent as a parameter, never handed out")
                .check(ours);
    }

    @Test
    void onlyTheCommandLinePrints() {
        noClasses()
                .that()
                .resideOutsideOfPackage(ROOT + ".cli")
                .should(GeneralCodingRules.ACCESS_STANDARD_STREAMS)
                .because("only cli prints; everything else returns data or reports progress")
                .check(ours);
    }

    @Test
    void settingsAreRecords() {
        classes()
                .that()
                .haveSimpleNameEndingWith("Settings")
                .should()
                .beRecords()
                .check(ours);
    }

    @Test
    void namesSayWhatAThingDoes() {
        noClasses()
                .should()
                .haveNameMatching(".*(Util|Utils|Helper|Helpers|Manager|Impl|Common)")
                .check(ours);
        assertThat(rooms.packages().keySet())
                .noneMatch(p -> p.matches(".*\\.(util|utils|common|core|impl|manager|helper|model)"));
    }

    @Test
    void nothingIsASingleton() {
        methods().should().notHaveName("getInstance").check(ours);
    }

    @Test
    void numbersAreWrittenTheSameEverywhere() {
        noClasses()
                .should()
                .callMethod(String.class, "format", String.class, Object[].class)
                .orShould()
                .callMethod(String.class, "formatted", Object[].class)
                .orShould()
                .callMethod(String.class, "toLowerCase")
                .orShould()
                .callMethod(String.class, "toUpperCase")
                .because("without Locale.ROOT a decimal point may come out as a comma")
                .check(ours);
    }

    @Test
    void everyPackageIsNullMarked() {
        List<String> unmarked = new ArrayList<>();
        for (String name : rooms.packages().keySet()) {
            if (ours.containPackage(name)) {
                JavaPackage found = ours.getPackage(name);
                if (!found.isAnnotatedWith(NullMarked.class)) {
                    unmarked.add(name);
                }
            }
        }
        assertThat(unmarked).isEmpty();
    }
}

package org.varwright.architecture;

import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.classes;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static com.tngtech.archunit.library.dependencies.SlicesRuleDefinition.slices;
import static org.junit.jupiter.api.Assertions.assertEquals;

import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;

/** The directions that ARCHITECTURE.md promises. */
class ArchitectureTest {
    private static final JavaClasses CORE = new ClassFileImporter()
            .withImportOption(ImportOption.Predefined.DO_NOT_INCLUDE_TESTS)
            .importPackages("org.varwright");

    @Test
    void coreUsesNothingThatABrowserCannotRun() {
        noClasses()
                .should()
                .dependOnClassesThat()
                .resideInAnyPackage(
                        "java.io..",
                        "java.nio.file..",
                        "java.net..",
                        "java.time..",
                        "java.lang.reflect..",
                        "java.lang.invoke..",
                        "java.util.concurrent..",
                        "java.sql..",
                        "java.awt..",
                        "javax..")
                .because("core runs on a tablet in a browser: no files, clocks, threads or reflection")
                .check(CORE);
    }

    @Test
    void coreDependsOnlyOnTheLibrariesThatItNames() {
        classes()
                .should()
                .onlyDependOnClassesThat()
                .resideInAnyPackage(
                        "org.varwright..", "java..", "org.ejml..", "org.snakeyaml.engine..", "org.jspecify..")
                .because("each library in core is one that the browser build must carry")
                .check(CORE);
    }

    @Test
    void packagesFormNoCycle() {
        slices().matching("org.varwright.(*)..")
                .should()
                .beFreeOfCycles()
                .because("a package that two-way depends on another is one subject in two places")
                .check(CORE);
    }

    @Test
    void theModelKnowsNothingOfWhatIsComputedFromIt() {
        noClasses()
                .that()
                .resideInAnyPackage(
                        "org.varwright.bank..",
                        "org.varwright.quantity..",
                        "org.varwright.basis..",
                        "org.varwright.json..")
                .should()
                .dependOnClassesThat()
                .resideInAnyPackage(
                        "org.varwright.bankfile..",
                        "org.varwright.network..",
                        "org.varwright.interlock..",
                        "org.varwright.isolation..",
                        "org.varwright.discharge..",
                        "org.varwright.survey..",
                        "org.varwright.fit..",
                        "org.varwright.energize..")
                .because("what is there, what follows from it and what to do about it are kept apart")
                .check(CORE);
    }

    /** The rows of ARCHITECTURE.md, highest first. */
    static final List<List<String>> ROWS = List.of(
            List.of("task"),
            List.of("job"),
            List.of("isolation"),
            List.of("drawing", "picture"),
            List.of("fuse", "record", "triage"),
            List.of("fit", "energize", "duty"),
            List.of("survey", "discharge", "unbalance", "resonance", "switching"),
            List.of("interlock", "network", "limit", "transients", "comtrade"),
            List.of("bankfile", "jobsheet"),
            List.of("bank"),
            List.of("plot", "waveform"),
            List.of("svg", "page", "quantity", "basis", "problem", "json"));

    @Test
    void lowerRowsKnowNothingOfUpperOnes() {
        for (int row = 1; row < ROWS.size(); row++) {
            String[] upper = ROWS.subList(0, row).stream()
                    .flatMap(List::stream)
                    .map(name -> "org.varwright." + name + "..")
                    .toArray(String[]::new);
            for (String name : ROWS.get(row)) {
                noClasses()
                        .that()
                        .resideInAPackage("org.varwright." + name + "..")
                        .should()
                        .dependOnClassesThat()
                        .resideInAnyPackage(upper)
                        .because("ARCHITECTURE.md promises the rows")
                        .check(CORE);
            }
        }
    }

    @Test
    void everyPackageStandsInARow() {
        Set<String> named = ROWS.stream().flatMap(List::stream).collect(Collectors.toCollection(TreeSet::new));
        Set<String> found = CORE.stream()
                .map(c -> c.getPackageName().replaceFirst("org\\.varwright\\.([a-z]+).*", "$1"))
                .collect(Collectors.toCollection(TreeSet::new));
        assertEquals(named, found);
    }
}

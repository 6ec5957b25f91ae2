import java.io.File;
import java.util.List;
import org.teavm.backend.javascript.JSModuleType;
import org.teavm.diagnostics.ProblemProvider;
import org.teavm.tooling.ConsoleTeaVMToolLog;
import org.teavm.tooling.EmptyTeaVMToolLog;
import org.teavm.tooling.TeaVMProblemRenderer;
import org.teavm.tooling.TeaVMTargetType;
import org.teavm.tooling.builder.BuildResult;
import org.teavm.tooling.builder.InProcessBuildStrategy;
import org.teavm.vm.TeaVMOptimizationLevel;

/**
 * Compiles the face of core for browsers: {@code Compile js|wasm FOLDER}, with everything that is compiled on the class path. Run with {@code -XX:hashCode=2}, or the compiler,
 * which goes through sets of objects in the order of their identity, gives its functions other names each time (docs/decisions/0122).
 */
final class Compile {
    private static final int TOP_LEVEL_NAMES = 80_000;

    private Compile() {}

    public static void main(String[] arguments) throws Exception {
        InProcessBuildStrategy build = new InProcessBuildStrategy();
        build.init();
        build.setLog(new EmptyTeaVMToolLog());
        build.setMainClass("org.varwright.browser.Face");
        build.setEntryPointName("main");
        build.setClassPathEntries(List.of(System.getProperty("java.class.path").split(File.pathSeparator)));
        build.setTargetDirectory(arguments[1]);
        build.setObfuscated(true);
        build.setOptimizationLevel(TeaVMOptimizationLevel.ADVANCED);
        build.setIncremental(false);
        switch (arguments[0]) {
            case "js" -> {
                build.setTargetType(TeaVMTargetType.JAVASCRIPT);
                build.setTargetFileName("varwright-core.mjs");
                build.setJsModuleType(JSModuleType.ES2015);
                build.setMaxTopLevelNames(TOP_LEVEL_NAMES);
            }
            case "wasm" -> {
                build.setTargetType(TeaVMTargetType.WEBASSEMBLY_GC);
                build.setTargetFileName("varwright-core.wasm");
            }
            default -> throw new IllegalArgumentException(arguments[0]);
        }
        BuildResult result = build.build();
        ProblemProvider problems = result.getProblems();
        TeaVMProblemRenderer.describeProblems(result.getCallGraph(), problems, new ConsoleTeaVMToolLog(false));
        if (!problems.getSevereProblems().isEmpty()) {
            System.exit(1);
        }
    }
}

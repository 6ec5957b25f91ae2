package org.varwright.task;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.TestFactory;
import org.varwright.json.Json;

/**
 * The shared vectors on the JVM; {@code browser/src/test/js/vectors.test.mjs} runs the same files through the compiled core.
 *
 * <p>They guard against change and against a difference between the two homes; that the numbers are right is the business of the reference and oracle
 * tests. After an intended change, run with {@code -Dvarwright.record=true} and read the difference before committing it.
 */
class VectorsGoldenTest {
    @TestFactory
    Stream<DynamicTest> vectors() throws IOException {
        List<DynamicTest> tests = new ArrayList<>();
        List<Path> files = Vectors.files();
        for (Path file : files) {
            Json.Arr vectors = (Json.Arr) Json.parse(Files.readString(file));
            if (Boolean.getBoolean("varwright.record")) {
                record(file, vectors);
                continue;
            }
            for (Json item : vectors.items()) {
                Json.Obj vector = (Json.Obj) item;
                String name = ((Json.Str) vector.get("name")).value();
                tests.add(DynamicTest.dynamicTest(file.getFileName() + ": " + name, () -> {
                    Json answer = Json.parse(
                            Tasks.run(Vectors.expand(vector.get("request")).print()));
                    same(answer, vector.get("response"), "$");
                }));
            }
        }
        tests.add(DynamicTest.dynamicTest("there are vectors", () -> assertTrue(!files.isEmpty())));
        return tests.stream();
    }

    private static void record(Path file, Json.Arr vectors) throws IOException {
        List<Json> recorded = new ArrayList<>();
        for (Json item : vectors.items()) {
            Json.Obj vector = (Json.Obj) item;
            recorded.add(Json.object()
                    .put("name", vector.get("name"))
                    .put("request", vector.get("request"))
                    .put(
                            "response",
                            Json.parse(Tasks.run(
                                    Vectors.expand(vector.get("request")).print())))
                    .build());
        }
        Files.writeString(file, Json.of(recorded).print() + "\n");
    }

    /** Numbers to 1e-9 relative (1e-12 absolute near zero), everything else exactly. */
    private static void same(Json actual, Json expected, String path) {
        switch (expected) {
            case Json.Num number -> {
                double value = assertInstanceOf(Json.Num.class, actual, path).value();
                assertEquals(number.value(), value, Math.max(1e-12, 1e-9 * Math.abs(number.value())), path);
            }
            case Json.Arr array -> {
                List<Json> items =
                        assertInstanceOf(Json.Arr.class, actual, path).items();
                assertEquals(array.items().size(), items.size(), path + ": length");
                for (int i = 0; i < items.size(); i++) {
                    same(items.get(i), array.items().get(i), path + "[" + i + "]");
                }
            }
            case Json.Obj object -> {
                Map<String, Json> members =
                        assertInstanceOf(Json.Obj.class, actual, path).members();
                assertEquals(List.copyOf(object.members().keySet()), List.copyOf(members.keySet()), path + ": members");
                members.forEach((name, value) -> same(value, object.get(name), path + "." + name));
            }
            case Json.Null none -> assertEquals(none, actual, path);
            case Json.Bool flag -> assertEquals(flag, actual, path);
            case Json.Str text -> assertEquals(text, actual, path);
        }
    }
}

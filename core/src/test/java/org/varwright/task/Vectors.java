package org.varwright.task;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.varwright.json.Json;

/** The files of shared vectors: requests with their answers. */
final class Vectors {
    private static final Path ROOT = Path.of("..");
    private static final Path VECTORS = Path.of("src/test/resources/vectors");

    private Vectors() {}

    static List<Path> files() throws IOException {
        try (Stream<Path> listed = Files.list(VECTORS)) {
            return listed.filter(f -> f.toString().endsWith(".json")).sorted().toList();
        }
    }

    /** Every request, with the texts of the files that it names. */
    static List<Json.Obj> requests() throws IOException {
        List<Json.Obj> requests = new ArrayList<>();
        for (Path file : files()) {
            for (Json vector : ((Json.Arr) Json.parse(Files.readString(file))).items()) {
                requests.add((Json.Obj) expand(((Json.Obj) vector).get("request")));
            }
        }
        return requests;
    }

    /** {@code {"$file": PATH}} stands for the text of a file of the project. */
    static Json expand(Json value) throws IOException {
        return switch (value) {
            case Json.Obj object -> {
                if (object.get("$file") instanceof Json.Str(String path)) {
                    yield Json.of(Files.readString(ROOT.resolve(path)));
                }
                Map<String, Json> members = new LinkedHashMap<>();
                for (Map.Entry<String, Json> member : object.members().entrySet()) {
                    members.put(member.getKey(), expand(member.getValue()));
                }
                yield new Json.Obj(members);
            }
            case Json.Arr array -> {
                List<Json> items = new ArrayList<>();
                for (Json item : array.items()) {
                    items.add(expand(item));
                }
                yield Json.of(items);
            }
            case Json.Null none -> none;
            case Json.Bool flag -> flag;
            case Json.Num number -> number;
            case Json.Str text -> text;
        };
    }
}

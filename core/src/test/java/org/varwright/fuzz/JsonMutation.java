package org.varwright.fuzz;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import org.varwright.json.Json;

/** Damages a JSON value at one place: another kind, another number, a member too few, a text that is damaged itself. */
public final class JsonMutation {
    private static final List<Json> OTHERS = List.of(
            Json.none(),
            Json.of(true),
            Json.of(false),
            Json.of(0.0),
            Json.of(-1.0),
            Json.of(1e308),
            Json.of(-1e308),
            Json.of(Double.MIN_VALUE),
            Json.of(0.5),
            Json.of(2147483648.0),
            Json.of(9.3e18),
            Json.of(""),
            Json.of("12.4 kV"),
            Json.of(List.of()),
            Json.of(List.of(Json.of("stage 1"), Json.of("stage 1"))),
            Json.of(List.of(Json.none(), Json.of(List.of()))),
            Json.object().build(),
            Json.object().put("", 1.0).build());

    private final Random random;
    private int left;

    private JsonMutation(Random random, int place) {
        this.random = random;
        left = place;
    }

    /** One change of a value, or two. */
    public static Json of(Random random, Json good) {
        Json value = good;
        for (int i = Math.max(1, random.nextInt(4) - 1); i > 0; i--) {
            value = new JsonMutation(random, random.nextInt(places(value))).changed(value);
        }
        return value;
    }

    private static int places(Json value) {
        return 1
                + switch (value) {
                    case Json.Obj object ->
                        object.members().values().stream()
                                .mapToInt(JsonMutation::places)
                                .sum();
                    case Json.Arr array ->
                        array.items().stream().mapToInt(JsonMutation::places).sum();
                    case Json.Null none -> 0;
                    case Json.Bool flag -> 0;
                    case Json.Num number -> 0;
                    case Json.Str text -> 0;
                };
    }

    private Json changed(Json value) {
        if (left-- == 0) {
            return other(value);
        }
        return switch (value) {
            case Json.Obj object -> {
                Map<String, Json> members = new LinkedHashMap<>();
                object.members().forEach((name, member) -> members.put(name, changed(member)));
                yield new Json.Obj(members);
            }
            case Json.Arr array -> {
                List<Json> items = new ArrayList<>();
                array.items().forEach(item -> items.add(changed(item)));
                yield Json.of(items);
            }
            case Json.Null none -> none;
            case Json.Bool flag -> flag;
            case Json.Num number -> number;
            case Json.Str text -> text;
        };
    }

    private Json other(Json value) {
        if (random.nextInt(4) == 0) {
            return Mutation.pick(random, OTHERS);
        }
        return switch (value) {
            case Json.Obj object -> withoutOne(object);
            case Json.Arr array -> {
                List<Json> items = new ArrayList<>(array.items());
                if (!items.isEmpty()) {
                    Json one = Mutation.pick(random, items);
                    items.add(one);
                    items.remove(random.nextInt(items.size()));
                }
                yield Json.of(items);
            }
            case Json.Null none -> Mutation.pick(random, OTHERS);
            case Json.Bool(boolean flag) -> Json.of(!flag);
            case Json.Num(double number) ->
                Json.of(
                        switch (random.nextInt(5)) {
                            case 0 -> -number;
                            case 1 -> number * 1e12;
                            case 2 -> number * 1e-12;
                            case 3 -> number + 0.5;
                            default -> 0.0;
                        });
            case Json.Str(String text) ->
                Json.of(random.nextInt(3) == 0 ? Mutation.strange(random) : Mutation.text(random, text));
        };
    }

    private Json withoutOne(Json.Obj object) {
        Map<String, Json> members = new LinkedHashMap<>(object.members());
        if (!members.isEmpty()) {
            String name = Mutation.pick(random, List.copyOf(members.keySet()));
            Json gone = members.remove(name);
            if (random.nextBoolean()) {
                members.put(name + "s", gone);
            }
        }
        return new Json.Obj(members);
    }
}

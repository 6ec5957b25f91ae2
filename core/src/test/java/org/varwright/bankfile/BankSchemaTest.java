package org.varwright.bankfile;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.networknt.schema.JsonSchema;
import com.networknt.schema.JsonSchemaFactory;
import com.networknt.schema.SpecVersion;
import com.networknt.schema.ValidationMessage;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;
import org.snakeyaml.engine.v2.api.Load;
import org.snakeyaml.engine.v2.api.LoadSettings;
import org.varwright.bank.Connection;
import org.varwright.bank.Device;

/** The schema for editors against the examples and against what the reader knows. */
class BankSchemaTest {
    private static final ObjectMapper MAPPER = new ObjectMapper();
    private static final JsonNode SCHEMA = schema();
    private static final JsonSchema VALIDATOR =
            JsonSchemaFactory.getInstance(SpecVersion.VersionFlag.V202012).getSchema(SCHEMA);

    private static JsonNode schema() {
        try (InputStream in = Objects.requireNonNull(BankFile.class.getResourceAsStream("bank.schema.json"))) {
            return MAPPER.readTree(in);
        } catch (IOException e) {
            throw new AssertionError(e);
        }
    }

    /** The document with the types that an editor gives it: YAML 1.2's core schema. */
    private static Set<ValidationMessage> validate(String yaml) {
        Object tree = new Load(LoadSettings.builder().build()).loadFromString(yaml);
        return VALIDATOR.validate(MAPPER.valueToTree(tree));
    }

    private static String text(String example) {
        return new String(BankFileTest.example(example), StandardCharsets.UTF_8);
    }

    @Test
    void everyExampleIsValidAndSoIsWhatTheWriterWrites() {
        for (String name : BankFileTest.ALL) {
            assertEquals(Set.of(), validate(text(name)), name);
            String written = BankFile.write(
                    BankFile.read(name, BankFileTest.example(name)).requireBank());
            assertEquals(Set.of(), validate(written), name);
        }
    }

    @Test
    void wrongFilesAreNotValid() {
        for (List<String> change : List.of(
                List.of("rating: 300 kvar", "rating: 300"),
                List.of("rating: 300 kvar", "rating: 300 kV"),
                List.of("    rating:", "    ratting:"),
                List.of("voltage: 13.8 kV", "voltage: 13,8 kV"),
                List.of("connection: wye-ungrounded\n", "connection: wye-ungroundet\n"),
                List.of("  grounding: solid", "  grounding: none"),
                List.of("standard: IEEE ", "# "),
                List.of("groups: 1     ", "groups: 0     "),
                List.of("units: 1     ", "units: two     "),
                List.of("tolerance: [0 %, +10 %]", "tolerance: 10 %"),
                List.of("key: TF-4}", "holds: closed}"),
                List.of("name: Tamarack Flats bank 2", "name: a/b"),
                List.of("kind: breaker", "kind: braker"),
                List.of("ratio: \"8400:120\"", "ratio: \"8400/120\""),
                List.of("    sections: 4", "    # "))) {
            assertFalse(
                    validate(BadFileTest.changed(change.get(0), change.get(1))).isEmpty(), change.toString());
        }
    }

    @Test
    void itHasTheKeysThatTheReaderKnows() {
        JsonNode definitions = SCHEMA.get("$defs");
        Set<String> sections = new TreeSet<>(Set.of("name", "names", "text"));
        for (Section section : Section.ALL) {
            sections.add(section.name());
            Set<String> keys = new LinkedHashSet<>();
            definitions.get(section.name()).get("properties").fieldNames().forEachRemaining(keys::add);
            assertEquals(Set.copyOf(section.readableKeys()), keys, section.name());
            assertFalse(
                    definitions.get(section.name()).get("additionalProperties").asBoolean(true));
        }
        Set<String> defined = new TreeSet<>();
        definitions.fieldNames().forEachRemaining(defined::add);
        assertEquals(sections, defined);
    }

    @Test
    void itHasTheWordsThatTheReaderKnows() {
        assertEquals(Set.of(Connection.values()), known("stage", "connection", Words.CONNECTIONS));
        assertEquals(Set.of(Device.Kind.values()), known("device", "kind", Words.DEVICE_KINDS));
        for (List<String> at : List.of(List.of("system", "grounding"), List.of("system", "earthing"))) {
            assertEquals(Set.copyOf(Words.GROUNDINGS.values()), known(at.get(0), at.get(1), Words.GROUNDINGS));
        }
        assertEquals(Set.copyOf(Words.SENSES.values()), known("protection", "senses", Words.SENSES));
        assertEquals(Set.copyOf(Words.CONTROLS.values()), known("control", "senses", Words.CONTROLS));
        assertEquals(Set.copyOf(Words.INTERNALS.values()), known("unit-type", "internal", Words.INTERNALS));
        assertEquals(Set.copyOf(Words.FUSE_KINDS.values()), known("fuse-type", "kind", Words.FUSE_KINDS));
        assertEquals(Set.copyOf(Words.REACTOR_PURPOSES.values()), known("reactor", "purpose", Words.REACTOR_PURPOSES));
        assertEquals(
                Set.copyOf(Words.REACTOR_POSITIONS.values()), known("reactor", "position", Words.REACTOR_POSITIONS));
    }

    /** What the reader makes of each word in the schema. */
    private static <E> Set<E> known(String section, String key, Map<String, E> words) {
        List<E> found = new ArrayList<>();
        JsonNode values =
                SCHEMA.get("$defs").get(section).get("properties").get(key).get("enum");
        assertTrue(values.size() > 1);
        for (JsonNode value : values) {
            found.add(Words.find(words, value.asText()).orElseThrow(() -> new AssertionError(value)));
        }
        return Set.copyOf(found);
    }

    @Test
    void everyKeyIsExplained() {
        for (Section section : Section.ALL) {
            JsonNode properties = SCHEMA.get("$defs").get(section.name()).get("properties");
            for (String key : section.readableKeys()) {
                JsonNode property = properties.get(key);
                assertTrue(property.has("description") || property.has("$ref"), section.name() + "." + key);
            }
        }
    }
}

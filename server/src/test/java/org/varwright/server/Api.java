package org.varwright.server;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assertions.fail;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import com.networknt.schema.JsonSchemaFactory;
import com.networknt.schema.SpecVersion;
import java.io.IOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.util.Iterator;
import java.util.Locale;
import org.snakeyaml.engine.v2.api.Load;
import org.snakeyaml.engine.v2.api.LoadSettings;

/** A client that holds every answer against the description of the API. */
final class Api {
    private static final ObjectMapper MAPPER = new ObjectMapper();

    private final HttpClient client = HttpClient.newHttpClient();
    private final String address;
    private final JsonNode description;

    Api(String address) throws IOException {
        this.address = address;
        description = MAPPER.valueToTree(new Load(LoadSettings.builder().build()).loadFromString(Server.openApiText()));
    }

    /** A request with headers given as name, value, name, value … */
    HttpResponse<String> send(String method, String path, String body, String... headers) throws Exception {
        HttpRequest.Builder request = HttpRequest.newBuilder(URI.create(address + path))
                .method(method, HttpRequest.BodyPublishers.ofString(body, StandardCharsets.UTF_8));
        if (headers.length > 0) {
            request.headers(headers);
        }
        HttpResponse<String> response = client.send(request.build(), HttpResponse.BodyHandlers.ofString());
        hold(method, path, response);
        return response;
    }

    HttpResponse<String> get(String path) throws Exception {
        return send("GET", path, "");
    }

    boolean healthy() throws Exception {
        return get("healthz").statusCode() == 200;
    }

    JsonNode json(HttpResponse<String> response) throws IOException {
        return MAPPER.readTree(response.body());
    }

    /** The status must be one that is described for the operation, and the body must fit its schema. */
    private void hold(String method, String path, HttpResponse<String> response) throws IOException {
        JsonNode operation = operation(method, path);
        if (operation.isMissingNode()) {
            return;
        }
        if (path.contains("%00")) {
            return; // no request: whoever sends it, the connection answers, and for every operation alike
        }
        String where = method + " " + path + ": " + response.statusCode();
        JsonNode described = resolve(operation.path("responses").path(String.valueOf(response.statusCode())));
        assertTrue(!described.isMissingNode(), where + " is not described; " + response.body());
        String type = response.headers().firstValue("Content-Type").orElse("").replaceFirst(";.*", "");
        JsonNode content = described.path("content");
        if (content.isMissingNode()) {
            assertEquals("", response.body(), where);
            return;
        }
        JsonNode schema = content.path(type).path("schema");
        assertTrue(!schema.isMissingNode(), where + " has the type " + type);
        if (type.endsWith("json") && !type.contains("ndjson")) {
            var found = JsonSchemaFactory.getInstance(SpecVersion.VersionFlag.V202012)
                    .getSchema(inlined(schema))
                    .validate(MAPPER.readTree(response.body()));
            assertEquals(0, found.size(), where + " " + found);
        }
    }

    private JsonNode operation(String method, String path) {
        String plain = path.replaceFirst("\\?.*", "");
        for (Iterator<String> names = description.path("paths").fieldNames(); names.hasNext(); ) {
            String name = names.next();
            if (plain.matches("api" + name.replaceAll("\\{[a-z0-9]+}", "[^/]+"))) {
                return description.path("paths").path(name).path(method.toLowerCase(Locale.ROOT));
            }
        }
        return plain.startsWith("api/b") && method.equals("GET")
                ? fail(plain + " is not described")
                : MAPPER.missingNode();
    }

    private JsonNode resolve(JsonNode node) {
        return node.has("$ref") ? description.at(node.get("$ref").asText().substring(1)) : node;
    }

    /** The schema with the description's components beside it, so that its references lead somewhere. */
    private JsonNode inlined(JsonNode schema) {
        ObjectNode whole = MAPPER.createObjectNode();
        whole.set("components", description.path("components"));
        whole.setAll((ObjectNode) schema.deepCopy());
        return whole;
    }
}

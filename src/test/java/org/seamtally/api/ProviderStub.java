package org.seamtally.api;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.sun.net.httpserver.HttpExchange;
import com.sun.net.httpserver.HttpServer;
import io.quarkus.test.common.QuarkusTestResourceLifecycleManager;
import java.io.IOException;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.net.URI;
import java.net.URLDecoder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.GeneralSecurityException;
import java.security.MessageDigest;
import java.util.Arrays;
import java.util.Base64;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * An OpenID Connect provider, as much of it as the code flow needs (OpenID Connect Core 1.0, 3.1; RFC 7636). Nobody is asked
 * for a password: who logs in is said in the query of its log-in page, as {@code sub}, {@code shop} and {@code roles}; a
 * browser that is sent there is sam, an estimator of Northside Tube.
 */
public final class ProviderStub implements QuarkusTestResourceLifecycleManager {

    static final String CLIENT = "seamtally-page";
    static final String SECRET = "a secret of more than thirty-two characters";

    private static final ObjectMapper JSON = new ObjectMapper();

    private HttpServer server;

    @Override
    public Map<String, String> start() {
        try {
            server = HttpServer.create(new InetSocketAddress(InetAddress.getLoopbackAddress(), 0), 0);
        } catch (IOException e) {
            throw new java.io.UncheckedIOException(e);
        }
        server.createContext("/.well-known/openid-configuration", exchange -> json(exchange, 200, discovery()));
        server.createContext("/keys", exchange -> json(exchange, 200, Map.of("keys", List.of(Tokens.jwk()))));
        server.createContext("/authorize", this::authorize);
        server.createContext("/token", this::token);
        server.start();
        return Map.of(
                "seamtally.access.provider",
                url(),
                "seamtally.access.page.client-id",
                CLIENT,
                "seamtally.access.page.client-secret",
                SECRET,
                "quarkus.tls.key-store.p12.path",
                keyStore().toString(),
                "quarkus.tls.key-store.p12.password",
                "changeit",
                "quarkus.http.test-ssl-port",
                "0");
    }

    @Override
    public void stop() {
        server.stop(0);
    }

    /** A certificate of the service's own, by the JDK's tool. */
    private static Path keyStore() {
        try {
            Path store = Files.createTempDirectory("tls").resolve("service.p12");
            Process tool = new ProcessBuilder(
                            Path.of(System.getProperty("java.home"), "bin", "keytool")
                                    .toString(),
                            "-genkeypair",
                            "-alias",
                            "service",
                            "-keyalg",
                            "EC",
                            "-dname",
                            "CN=localhost",
                            "-validity",
                            "2",
                            "-storetype",
                            "PKCS12",
                            "-storepass",
                            "changeit",
                            "-keystore",
                            store.toString())
                    .inheritIO()
                    .start();
            if (tool.waitFor() != 0) {
                throw new IllegalStateException("keytool made no certificate");
            }
            return store;
        } catch (IOException | InterruptedException e) {
            throw new IllegalStateException(e);
        }
    }

    private String url() {
        return "http://127.0.0.1:" + server.getAddress().getPort();
    }

    private Map<String, Object> discovery() {
        return Map.of(
                "issuer",
                url(),
                "authorization_endpoint",
                url() + "/authorize",
                "token_endpoint",
                url() + "/token",
                "jwks_uri",
                url() + "/keys",
                "response_types_supported",
                List.of("code"),
                "subject_types_supported",
                List.of("public"),
                "id_token_signing_alg_values_supported",
                List.of("RS256"));
    }

    /** Somebody logs in: back with a code, which holds all that the tokens are to say. */
    private void authorize(HttpExchange exchange) throws IOException {
        Map<String, String> asked = new HashMap<>(form(exchange.getRequestURI().getRawQuery()));
        asked.putIfAbsent("sub", "sam");
        asked.putIfAbsent("shop", "Northside Tube");
        asked.putIfAbsent("roles", "estimator price-keeper");
        String code = Base64.getUrlEncoder().withoutPadding().encodeToString(JSON.writeValueAsBytes(asked));
        exchange.getResponseHeaders()
                .add("Location", asked.get("redirect_uri") + "?code=" + code + "&state=" + asked.get("state"));
        exchange.sendResponseHeaders(302, -1);
        exchange.close();
    }

    private void token(HttpExchange exchange) throws IOException {
        Map<String, String> sent = form(new String(exchange.getRequestBody().readAllBytes(), StandardCharsets.UTF_8));
        String basic = exchange.getRequestHeaders().getFirst("Authorization");
        String client =
                "Basic " + Base64.getEncoder().encodeToString((CLIENT + ":" + SECRET).getBytes(StandardCharsets.UTF_8));
        JsonNode asked = JSON.readTree(Base64.getUrlDecoder().decode(sent.get("code")));
        if (!client.equals(basic)
                || !"authorization_code".equals(sent.get("grant_type"))
                || !asked.path("redirect_uri").asText().equals(sent.get("redirect_uri"))
                || !asked.path("code_challenge").asText().equals(challenge(sent.get("code_verifier")))) {
            json(exchange, 400, Map.of("error", "invalid_grant"));
            return;
        }
        Tokens token = Tokens.of(
                        asked.path("shop").asText(),
                        asked.path("roles").asText().split(" "))
                .with("iss", url())
                .with("sub", asked.path("sub").asText());
        String access = token.signed();
        String id = token.with("aud", CLIENT)
                .with("nonce", asked.path("nonce").asText())
                .signed();
        json(
                exchange,
                200,
                Map.of("token_type", "Bearer", "expires_in", 3_600, "access_token", access, "id_token", id));
    }

    private static String challenge(String verifier) {
        try {
            MessageDigest sha = MessageDigest.getInstance("SHA-256");
            return Base64.getUrlEncoder()
                    .withoutPadding()
                    .encodeToString(sha.digest(String.valueOf(verifier).getBytes(StandardCharsets.US_ASCII)));
        } catch (GeneralSecurityException e) {
            throw new IllegalStateException(e);
        }
    }

    /** Names and values of a query, or of a form. */
    static Map<String, String> form(String encoded) {
        Map<String, String> all = new LinkedHashMap<>();
        Arrays.stream(encoded.split("&"))
                .map(pair -> pair.split("=", 2))
                .forEach(pair -> all.put(decoded(pair[0]), decoded(pair[1])));
        return all;
    }

    static Map<String, String> query(String url) {
        return form(URI.create(url).getRawQuery());
    }

    private static String decoded(String text) {
        return URLDecoder.decode(text, StandardCharsets.UTF_8);
    }

    private static void json(HttpExchange exchange, int status, Object body) throws IOException {
        byte[] bytes = JSON.writeValueAsBytes(body);
        exchange.getResponseHeaders().add("Content-Type", "application/json");
        exchange.sendResponseHeaders(status, bytes.length);
        exchange.getResponseBody().write(bytes);
        exchange.close();
    }
}

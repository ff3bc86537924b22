package org.seamtally.api;

import com.fasterxml.jackson.databind.ObjectMapper;
import java.nio.charset.StandardCharsets;
import java.security.GeneralSecurityException;
import java.security.KeyFactory;
import java.security.KeyPair;
import java.security.KeyPairGenerator;
import java.security.PrivateKey;
import java.security.PublicKey;
import java.security.Signature;
import java.security.interfaces.RSAPublicKey;
import java.security.spec.PKCS8EncodedKeySpec;
import java.security.spec.X509EncodedKeySpec;
import java.time.Instant;
import java.util.Base64;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Set;

/** An issuer of tokens (RFC 7519, RS256), written by hand: another reading of the standards than the one under test. */
final class Tokens {

    static final String ISSUER = "https://issuer.example";
    static final String AUDIENCE = "seamtally";

    private static final String KEYS = "org.seamtally.api.Tokens";

    private static final Base64.Encoder URL = Base64.getUrlEncoder().withoutPadding();
    private static final ObjectMapper JSON = new ObjectMapper();

    private final PrivateKey key;
    private final Map<String, Object> head = new LinkedHashMap<>(Map.of("alg", "RS256", "typ", "JWT", "kid", "one"));
    private final Map<String, Object> claims = new LinkedHashMap<>();

    private Tokens(PrivateKey key) {
        this.key = key;
    }

    /** A token that is taken, of somebody with these roles. @param shop null for none */
    static Tokens of(String shop, String... roles) {
        Tokens token = new Tokens(privateKey());
        long now = Instant.now().getEpochSecond();
        token.with("iss", ISSUER)
                .with("aud", AUDIENCE)
                .with("sub", "somebody of " + shop)
                .with("iat", now)
                .with("exp", now + 3_600)
                .with("roles", Set.of(roles));
        return shop == null ? token : token.with("shop", shop);
    }

    /** The same with another claim. @param value null for none */
    Tokens with(String claim, Object value) {
        if (value == null) {
            claims.remove(claim);
        } else {
            claims.put(claim, value);
        }
        return this;
    }

    String signed() {
        return signed(key);
    }

    /** Signed by another key than the issuer's. */
    String forged() {
        return signed(newPair().getPrivate());
    }

    /** Not signed at all. */
    String unsigned() {
        head.put("alg", "none");
        return content() + ".";
    }

    /** Signed with the issuer's public key as if it were a shared secret. */
    String confused() {
        head.put("alg", "HS256");
        try {
            javax.crypto.Mac mac = javax.crypto.Mac.getInstance("HmacSHA256");
            mac.init(new javax.crypto.spec.SecretKeySpec(pem().getBytes(StandardCharsets.US_ASCII), "HmacSHA256"));
            String content = content();
            return content + "." + URL.encodeToString(mac.doFinal(content.getBytes(StandardCharsets.US_ASCII)));
        } catch (GeneralSecurityException e) {
            throw new IllegalStateException(e);
        }
    }

    private String signed(PrivateKey by) {
        try {
            Signature signature = Signature.getInstance("SHA256withRSA");
            signature.initSign(by);
            String content = content();
            signature.update(content.getBytes(StandardCharsets.US_ASCII));
            return content + "." + URL.encodeToString(signature.sign());
        } catch (GeneralSecurityException e) {
            throw new IllegalStateException(e);
        }
    }

    private String content() {
        return part(head) + "." + part(claims);
    }

    private static String part(Object json) {
        try {
            return URL.encodeToString(JSON.writeValueAsBytes(json));
        } catch (com.fasterxml.jackson.core.JsonProcessingException e) {
            throw new IllegalStateException(e);
        }
    }

    /** The issuer's public key. */
    static String pem() {
        return "-----BEGIN PUBLIC KEY-----\n"
                + Base64.getMimeEncoder(64, new byte[] {'\n'})
                        .encodeToString(publicKey().getEncoded())
                + "\n-----END PUBLIC KEY-----\n";
    }

    /** The issuer's public key as RFC 7517 has it. */
    static Map<String, Object> jwk() {
        RSAPublicKey rsa = (RSAPublicKey) publicKey();
        return Map.of(
                "kty",
                "RSA",
                "kid",
                "one",
                "alg",
                "RS256",
                "use",
                "sig",
                "n",
                URL.encodeToString(unsigned(rsa.getModulus().toByteArray())),
                "e",
                URL.encodeToString(unsigned(rsa.getPublicExponent().toByteArray())));
    }

    private static byte[] unsigned(byte[] number) {
        return number[0] == 0 ? java.util.Arrays.copyOfRange(number, 1, number.length) : number;
    }

    private static PublicKey publicKey() {
        try {
            return KeyFactory.getInstance("RSA").generatePublic(new X509EncodedKeySpec(bytes(0)));
        } catch (GeneralSecurityException e) {
            throw new IllegalStateException(e);
        }
    }

    private static PrivateKey privateKey() {
        try {
            return KeyFactory.getInstance("RSA").generatePrivate(new PKCS8EncodedKeySpec(bytes(1)));
        } catch (GeneralSecurityException e) {
            throw new IllegalStateException(e);
        }
    }

    /** One pair a run, beside all class loaders: the test's profile and its tests are loaded by two. */
    private static byte[] bytes(int half) {
        String both = (String) System.getProperties().computeIfAbsent(KEYS, name -> {
            KeyPair pair = newPair();
            Base64.Encoder text = Base64.getEncoder();
            return text.encodeToString(pair.getPublic().getEncoded()) + " "
                    + text.encodeToString(pair.getPrivate().getEncoded());
        });
        return Base64.getDecoder().decode(both.split(" ")[half]);
    }

    private static KeyPair newPair() {
        try {
            KeyPairGenerator pairs = KeyPairGenerator.getInstance("RSA");
            pairs.initialize(2_048);
            return pairs.generateKeyPair();
        } catch (GeneralSecurityException e) {
            throw new IllegalStateException(e);
        }
    }
}

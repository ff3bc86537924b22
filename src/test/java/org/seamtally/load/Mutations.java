package org.seamtally.load;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Set;

/** What is done to a request that fits, so that it may not fit any more. */
final class Mutations {

    private static final List<String> MEDIA_TYPES = List.of(
            "application/json",
            "application/json; charset=utf-16",
            "application/json;charset=\"utf-8\"",
            "application/x-ndjson",
            "text/csv",
            "text/csv; header=absent",
            "text/html",
            "text/event-stream",
            "application/pdf",
            "application/xml",
            "multipart/form-data",
            "multipart/form-data; boundary=",
            "multipart/form-data; boundary=part-of-the-form",
            "application/json, text/csv",
            "*/*",
            "*/*;q=0",
            "text/*;q=0.5, application/json;q=2",
            "application/",
            "/",
            ";;;",
            "é",
            "");

    private static final List<String> WORDS = List.of(
            "",
            " ",
            "0",
            "-1",
            "1.5",
            "NaN",
            "Infinity",
            "null",
            "true",
            "us",
            "si",
            "furlongs",
            "99999999999999999999",
            "2147483648",
            "1e9",
            "*",
            "%",
            "' or 1=1 --",
            "<b>",
            "../..",
            "..;",
            "a/b",
            "\\",
            "\"",
            "{}",
            "\u0000",
            "\uFEFF",
            "\uD83D\uDD25",
            "ﷺ",
            "e\u0301",
            "\u202E",
            "00000000-0000-0000-0000-000000000000",
            "3F1C6A5E-8F2B-4D0E-9A51-7C9BE0A4D210",
            "x".repeat(300));

    /** Bytes that a target may hold where a client does not know better. */
    private static final List<String> RAW_TARGETS = List.of(
            "%00", "%zz", "%", "%C0%AF", "%2e%2e", "..", "//", "#", "%0d%0aX-Y:%20z", "é", ";a=b", "|", "[", "?");

    private static final List<String> METHODS =
            List.of("GET", "HEAD", "POST", "PUT", "DELETE", "PATCH", "OPTIONS", "TRACE", "BREW", "get");

    private static final List<Map.Entry<String, String>> HEADERS = List.of(
            Map.entry("Host", "elsewhere.invalid"),
            Map.entry("Host", ""),
            Map.entry("Origin", "http://elsewhere.invalid"),
            Map.entry("Origin", "null"),
            Map.entry("Sec-Fetch-Site", "cross-site"),
            Map.entry("Content-Encoding", "gzip"),
            Map.entry("Accept-Encoding", "gzip, br;q=0.1"),
            Map.entry("Accept-Language", "de, *;q=0"),
            Map.entry("Accept-Charset", "utf-7"),
            Map.entry("Expect", "100-continue"),
            Map.entry("Expect", "200-ok"),
            Map.entry("Range", "bytes=0-1"),
            Map.entry("If-Match", "\"1\""),
            Map.entry("If-Match", "W/\"1\", \"2-us\", *"),
            Map.entry("If-Match", "\"99999999999\""),
            Map.entry("If-Match", "1"),
            Map.entry("If-Match", "\"a\",".repeat(1500) + "\"a\""),
            Map.entry("If-None-Match", "\"1\""),
            Map.entry("If-None-Match", "*"),
            Map.entry("If-Modified-Since", "yesterday"),
            Map.entry("Idempotency-Key", ""),
            Map.entry("Idempotency-Key", "two words"),
            Map.entry("Idempotency-Key", "k".repeat(256)),
            Map.entry("Idempotency-Key", "é"),
            Map.entry("Last-Event-ID", "99999999999999999999"),
            Map.entry("Last-Event-ID", "\uD83D\uDD25"),
            Map.entry("Authorization", "Bearer nothing"),
            Map.entry("Cookie", "a=b; c"),
            Map.entry("X-HTTP-Method-Override", "DELETE"),
            Map.entry("X-Forwarded-For", "127.0.0.1, ::1"),
            Map.entry("X-Request-ID", "r".repeat(2000)),
            Map.entry("X-Request-ID", "\"<b>\u0000"),
            Map.entry("traceparent", "00-zz-zz-zz"),
            Map.entry("Upgrade", "h2c"),
            Map.entry("Transfer-Encoding", "chunked"),
            Map.entry("X-Long", "y".repeat(30_000)));

    private static final List<byte[]> PIECES = List.of(
            bytes("\""),
            bytes(","),
            bytes("{"),
            bytes("}"),
            bytes("["),
            bytes("]"),
            bytes("\n"),
            bytes("\r\n"),
            bytes("\u0000"),
            bytes("\\u"),
            bytes("\\"),
            bytes(":"),
            bytes(";"),
            bytes("\uFEFF"),
            bytes("1e9"),
            bytes("-"),
            bytes("NaN"),
            bytes("--" + FuzzRequest.BOUNDARY),
            new byte[] {(byte) 0xFF},
            new byte[] {(byte) 0xC3},
            new byte[] {(byte) 0xED, (byte) 0xA0, (byte) 0x80});

    /** Kinds of change; those of a body's fields come before those of its text, which are made of what the fields became. */
    private enum Kind {
        FIELDS,
        FIELDS_AGAIN,
        TEXT,
        QUERY,
        TARGET,
        METHOD,
        HEADER,
        MEDIA_TYPE
    }

    private Mutations() {}

    /** Changes one to three things. */
    static void mutate(FuzzRequest request, Dice dice) {
        Set<Kind> kinds = EnumSet.noneOf(Kind.class);
        int wanted = dice.from(1, 3);
        List<Kind> possible = new ArrayList<>(List.of(Kind.QUERY, Kind.HEADER, Kind.MEDIA_TYPE));
        if (dice.chance(0.2)) {
            possible.add(Kind.METHOD);
        }
        if (request.operation.path().contains("{") || dice.chance(0.2)) {
            possible.add(Kind.TARGET);
        }
        if (request.hasBody()) {
            boolean hasTrees =
                    request.parts.stream().anyMatch(part -> !part.trees().isEmpty());
            // most of what a service reads is in its bodies
            possible = new ArrayList<>(List.of(dice.one(possible), Kind.TEXT));
            if (hasTrees) {
                possible.addAll(List.of(Kind.FIELDS, Kind.FIELDS, Kind.FIELDS, Kind.FIELDS_AGAIN));
            }
        }
        for (int i = 0; i < wanted; i++) {
            kinds.add(dice.one(possible));
        }
        for (Kind kind : kinds) {
            apply(kind, request, dice);
        }
    }

    private static void apply(Kind kind, FuzzRequest request, Dice dice) {
        switch (kind) {
            case FIELDS, FIELDS_AGAIN -> fields(request, dice);
            case TEXT -> text(request, dice);
            case QUERY -> query(request, dice);
            case TARGET -> target(request, dice);
            case METHOD -> {
                request.method = dice.one(METHODS);
                request.touched.add(FuzzRequest.Touched.TARGET);
            }
            case HEADER -> {
                Map.Entry<String, String> header = dice.one(HEADERS);
                request.headers.put(header.getKey(), header.getValue());
                request.touched.add(FuzzRequest.Touched.HEADERS);
            }
            case MEDIA_TYPE -> {
                String name = request.hasBody() && dice.chance(0.5) ? "Content-Type" : "Accept";
                if (dice.chance(0.1)) {
                    request.headers.remove(name);
                } else {
                    request.headers.put(name, dice.one(MEDIA_TYPES));
                }
                request.touched.add(FuzzRequest.Touched.HEADERS);
            }
        }
    }

    private static void fields(FuzzRequest request, Dice dice) {
        List<FuzzRequest.Part> withFields =
                request.parts.stream().filter(one -> !one.trees().isEmpty()).toList();
        FuzzRequest.Part part = dice.one(withFields);
        int at = request.parts.indexOf(part);
        List<com.fasterxml.jackson.databind.JsonNode> trees = new ArrayList<>(part.trees());
        int line = dice.below(trees.size());
        trees.set(line, FieldMutations.mutated(trees.get(line), dice));
        request.parts.set(at, new FuzzRequest.Part(part.name(), part.mediaType(), trees, null));
        request.touched.add(FuzzRequest.Touched.BODY);
    }

    private static void text(FuzzRequest request, Dice dice) {
        byte[] body = request.body();
        int at = dice.below(body.length + 1);
        byte[] before = Arrays.copyOf(body, at);
        byte[] after = Arrays.copyOfRange(body, at, body.length);
        int gone = Math.min(after.length, dice.from(1, 20));
        request.body(
                switch (dice.below(7)) {
                    case 0 -> before;
                    case 1 -> joined(before, dice.one(PIECES), after);
                    case 2 -> joined(before, Arrays.copyOfRange(after, gone, after.length));
                    case 3 -> joined(before, Arrays.copyOf(after, gone), after);
                    case 4 -> doubledKey(body, at);
                    case 5 -> joined(body, dice.one(PIECES), dice.chance(0.5) ? body : new byte[0]);
                    default -> {
                        byte[] flipped = body.clone();
                        for (int i = dice.from(1, 4); i > 0 && flipped.length > 0; i--) {
                            flipped[dice.below(flipped.length)] ^= (byte) (1 << dice.below(8));
                        }
                        yield flipped;
                    }
                });
        request.touched.add(FuzzRequest.Touched.BODY);
    }

    /** A field of the first object after a place once more. */
    private static byte[] doubledKey(byte[] body, int from) {
        String text = new String(body, StandardCharsets.UTF_8);
        int open = text.indexOf("{\"", Math.min(from, text.length()));
        int end = open < 0 ? -1 : text.indexOf("\":", open + 2);
        return end < 0
                ? body
                : bytes(text.substring(0, open + 1) + text.substring(open + 1, end) + "\":0,"
                        + text.substring(open + 1));
    }

    private static void query(FuzzRequest request, Dice dice) {
        if (request.query.isEmpty() || dice.chance(0.4)) {
            String name = request.operation.parameters().stream()
                    .filter(parameter -> parameter.in().equals("query"))
                    .map(ApiDocument.Parameter::name)
                    .findFirst()
                    .filter(any -> dice.chance(0.7))
                    .orElse("shape");
            request.query.add(Map.entry(name, dice.one(WORDS)));
        } else {
            int at = dice.below(request.query.size());
            request.query.set(at, Map.entry(request.query.get(at).getKey(), dice.one(WORDS)));
        }
        request.touched.add(FuzzRequest.Touched.QUERY);
    }

    private static void target(FuzzRequest request, Dice dice) {
        int at = dice.below(request.segments.size());
        if (dice.chance(0.3)) {
            request.rawTarget = true;
            request.segments.replaceAll(segment -> segment.replaceAll("[^!-~]", "%20"));
            request.query.replaceAll(parameter ->
                    Map.entry(parameter.getKey(), parameter.getValue().replaceAll("[^!-~]", "%20")));
            request.segments.set(at, request.segments.get(at) + dice.one(RAW_TARGETS));
        } else {
            request.segments.set(at, dice.chance(0.2) ? request.segments.get(at) + "/" : dice.one(WORDS));
        }
        request.touched.add(FuzzRequest.Touched.TARGET);
    }

    private static byte[] joined(byte[]... parts) {
        byte[] whole =
                new byte[Arrays.stream(parts).mapToInt(part -> part.length).sum()];
        int at = 0;
        for (byte[] part : parts) {
            System.arraycopy(part, 0, whole, at, part.length);
            at += part.length;
        }
        return whole;
    }

    private static byte[] bytes(String text) {
        return text.getBytes(StandardCharsets.UTF_8);
    }
}

package org.seamtally.wire;

import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonStreamContext;
import com.fasterxml.jackson.core.util.JsonParserDelegate;
import com.fasterxml.jackson.databind.DeserializationConfig;
import com.fasterxml.jackson.databind.InjectableValues;
import com.fasterxml.jackson.databind.cfg.CacheProvider;
import com.fasterxml.jackson.databind.deser.DefaultDeserializationContext;
import com.fasterxml.jackson.databind.deser.DeserializerFactory;
import com.fasterxml.jackson.databind.util.TokenBuffer;

/** One reading of a body, which knows where a field that was set aside stands. */
final class Reading extends DefaultDeserializationContext {

    private static final long serialVersionUID = 1;

    Reading(DeserializerFactory factory) {
        super(factory, null);
    }

    private Reading(Reading from, DeserializationConfig config, JsonParser parser, InjectableValues values) {
        super(from, config, parser, values);
    }

    private Reading(Reading from, DeserializationConfig config) {
        super(from, config);
    }

    private Reading(Reading from, DeserializerFactory factory) {
        super(from, factory);
    }

    private Reading(Reading from) {
        super(from);
    }

    private Reading(Reading from, CacheProvider caches) {
        super(from, caches);
    }

    /**
     * Fields that come before a joint's kind, or that a record does not know, are set aside and read later. Where the
     * first of them is itself a structure the library notes that structure as the place of all of them: one level too
     * deep, and every path told from there would be wrong.
     */
    @Override
    public TokenBuffer bufferForInputBuffering(JsonParser parser) {
        return new TokenBuffer(
                new JsonParserDelegate(parser) {
                    @Override
                    public JsonStreamContext getParsingContext() {
                        return Misfits.standsIn(parser);
                    }
                },
                this);
    }

    @Override
    public DefaultDeserializationContext copy() {
        return new Reading(this);
    }

    @Override
    public DefaultDeserializationContext with(DeserializerFactory factory) {
        return new Reading(this, factory);
    }

    @Override
    public DefaultDeserializationContext withCaches(CacheProvider caches) {
        return new Reading(this, caches);
    }

    @Override
    public DefaultDeserializationContext createInstance(
            DeserializationConfig config, JsonParser parser, InjectableValues values) {
        return new Reading(this, config, parser, values);
    }

    @Override
    public DefaultDeserializationContext createDummyInstance(DeserializationConfig config) {
        return new Reading(this, config);
    }
}

package io.rowledger.results;

import com.fasterxml.jackson.annotation.JacksonAnnotationsInside;
import com.fasterxml.jackson.annotation.JsonSetter;
import com.fasterxml.jackson.annotation.Nulls;
import com.fasterxml.jackson.databind.annotation.JsonDeserialize;
import com.fasterxml.jackson.databind.annotation.JsonSerialize;
import java.lang.annotation.ElementType;
import java.lang.annotation.Retention;
import java.lang.annotation.RetentionPolicy;
import java.lang.annotation.Target;

/**
 * Decimals with which a record component is written: a {@code double}, or an array of them in one or two dimensions. NaN
 * and infinite values are written as {@code null}, and {@code null} is read as NaN.
 */
@JacksonAnnotationsInside
@JsonSerialize(using = DecimalsSerializer.class)
@JsonDeserialize(using = DecimalsDeserializer.class)
@JsonSetter(nulls = Nulls.SET)
@Retention(RetentionPolicy.RUNTIME)
@Target(ElementType.FIELD)
public @interface Decimals {
    /** Digits after the point; trailing zeros are not written. */
    int value();
}

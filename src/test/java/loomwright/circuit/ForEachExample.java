package loomwright.circuit;

import java.lang.annotation.ElementType;
import java.lang.annotation.Retention;
import java.lang.annotation.RetentionPolicy;
import java.lang.annotation.Target;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** A test of what holds for every example that the service hands out; it is given their names one by one. */
@ParameterizedTest
@MethodSource("loomwright.circuit.Plans#exampleNames")
@Target(ElementType.METHOD)
@Retention(RetentionPolicy.RUNTIME)
public @interface ForEachExample {}

/** Operations: {@link loomwright.service.endpoint.Calculation} reads a record, calls one function of the domain and writes its answer; beside it diagrams, metrics and readiness. */
@NullMarked
package loomwright.service.endpoint;

import org.jspecify.annotations.NullMarked;

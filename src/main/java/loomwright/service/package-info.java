/**
 * HTTP: how a request becomes an answer. The only package that knows the web server, the JSON binding and the contract
 * validator; it computes nothing.
 *
 * <p>Reading list, in this order:
 *
 * <ol>
 *   <li>{@link loomwright.service.Routes}: every operation on one line
 *   <li>{@link loomwright.service.endpoint.Calculation}: what most of those lines do: read, call once, write
 *   <li>{@link loomwright.service.http.Request}, {@link loomwright.service.input.Bodies}, {@link loomwright.service.input.Queries}: reading
 *   <li>{@link loomwright.service.http.Representations}, {@link loomwright.service.input.Json}: writing
 *   <li>{@link loomwright.service.stream.Bulk}, {@link loomwright.service.stream.LineWork}: many lines by the same calculations
 *   <li>{@link loomwright.service.input.Contract}: {@code openapi.yaml} as the judge of what is read
 *   <li>{@link loomwright.service.http.Problems}: the one place where an exception becomes a problem document
 *   <li>{@link loomwright.service.Server}: the web server around all that
 * </ol>
 */
@NullMarked
package loomwright.service;

import org.jspecify.annotations.NullMarked;

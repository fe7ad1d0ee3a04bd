/**
 * HTTP: how a request becomes an answer. The only package that knows the web server, the JSON binding and the contract
 * validator; it computes nothing.
 *
 * <p>Reading list, in this order:
 *
 * <ol>
 *   <li>{@link loomwright.service.Routes}: every operation on one line
 *   <li>{@link loomwright.service.Calculation}: what most of those lines do: read, call once, write
 *   <li>{@link loomwright.service.Request}, {@link loomwright.service.Bodies}, {@link loomwright.service.Queries}: reading
 *   <li>{@link loomwright.service.Faces}, {@link loomwright.service.Json}: writing
 *   <li>{@link loomwright.service.Bulk}, {@link loomwright.service.LineWork}: many lines by the same calculations
 *   <li>{@link loomwright.service.Contract}: {@code openapi.yaml} as the judge of what is read
 *   <li>{@link loomwright.service.Problems}: the one place where an exception becomes a problem document
 *   <li>{@link loomwright.service.Server}: the web server around all that
 * </ol>
 */
@NullMarked
package loomwright.service;

import org.jspecify.annotations.NullMarked;

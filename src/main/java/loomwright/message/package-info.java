/**
 * Everything that a person reads. The code says <em>what</em> with codes and arguments; the catalogue says it in words.
 *
 * <p><b>To say something new</b>
 * <ol>
 *   <li>Add a constant to the enum of your topic, or write one: {@code enum EarthCode implements MessageCode}.
 *   <li>Add its text to a file under {@code src/main/resources/messages/en}. The key is the name of the enum and of the
 *       constant: {@code earth-code.earth-drop = {part}: {dropV} is lost in its earth.} A new file also gets its line in
 *       {@link loomwright.message.Catalogue}, {@code TOPICS}.
 *   <li>Make the message: {@code EARTH_DROP.with(arg("part", part.thing()), arg("dropV", 0.46))}. In a finding:
 *       {@code Finding.warning(EARTH_DROP.with(…), basis).remedy(CLEAN_EARTH.with())}.
 * </ol>
 * The tests find a constant without a text, a text without a constant, and a text that names an argument which the code
 * does not give.
 *
 * <p><b>Arguments</b> ({@link loomwright.message.Argument}, made by {@link loomwright.message.Arg}) are quantities, counts,
 * things of the plan, instants, words of closed sets, lists, texts of the user, and other messages. The name of a quantity
 * ends in its unit, as in the contract: {@code dropV}, {@code marginRatio}. Give SI units; the formatter chooses kV, mA or
 * mΩ, three digits at most, and the resolution of a meter. A word of a closed set is an enum that implements
 * {@link loomwright.message.MessageCode}.
 *
 * <p><b>Texts</b> follow the ICU message format ({@link loomwright.message.MessagePattern}). A line whose key ends in
 * {@code .short} is the form for pictures and posts. A sentence that is not always said stands in a plural or a select:
 * <code>{others, plural, =0 {} other { Also affected: {others}.}}</code>
 *
 * <p><b>In JSON</b> a message is {@code {"code", "arguments", "text"}}. Tests assert code and arguments.
 *
 * <p><b>To add a language</b> add a folder beside {@code en} with the same files. {@code language.properties} holds its
 * plural rules and its marks in numbers. No code changes.
 */
@NullMarked
package loomwright.message;

import org.jspecify.annotations.NullMarked;

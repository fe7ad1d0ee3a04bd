package loomwright.catalogue;

/**
 * What is not known of a part, and what counts instead.
 *
 * @param limit in sentences
 * @param source of what counts instead
 * @param status how far it was compared with the source
 */
public record ModelLimit(String limit, String source, String status) {}

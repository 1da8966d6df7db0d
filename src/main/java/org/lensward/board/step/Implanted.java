package org.lensward.board.step;

/**
 * Who implanted the lens, and where.
 *
 * @param surgeon as the record refers to them, or a name
 * @param hospital likewise
 */
public record Implanted(String surgeon, String hospital) {}

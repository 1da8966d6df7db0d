package org.lensward.board.day;

/**
 * How one booking's cartons stand.
 *
 * @param code covered, fetch, short: the shape and colour that go with it
 * @param words what a person reads
 */
public record StockWord(String code, String words) {}

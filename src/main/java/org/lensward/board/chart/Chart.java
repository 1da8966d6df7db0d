package org.lensward.board.chart;

import java.util.List;

/**
 * A chart and what it says to someone who does not see it.
 *
 * @param id name of it on its page, letters and hyphens
 * @param title what it shows
 * @param words what there is to see in it, a sentence or two
 * @param svg the drawing, with title and description inside; presentation attributes alone, no style
 * @param table the figures drawn
 */
public record Chart(String id, String title, String words, String svg, Table table) {

    /**
     * The figures behind a chart.
     *
     * @param head one for each column
     * @param rows as many cells as the head
     */
    public record Table(List<String> head, List<List<String>> rows) {
        public Table {
            head = List.copyOf(head);
            rows = rows.stream().map(List::copyOf).toList();
        }
    }
}

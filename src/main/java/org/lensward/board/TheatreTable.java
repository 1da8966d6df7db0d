package org.lensward.board;

import java.util.List;
import java.util.function.Function;
import java.util.stream.Collectors;

/** The theatre list as a table for a terminal: columns as wide as their widest cell, reasons last and whole. */
public final class TheatreTable {

    private record Column(String title, Function<TheatreLine, String> cell) {}

    private static final List<Column> COLUMNS = List.of(
            new Column("start", TheatreLine::start),
            new Column("patient", TheatreLine::patient),
            new Column("booking", TheatreLine::booking),
            new Column("eye", TheatreLine::eye),
            new Column("lens", TheatreLine::lens),
            new Column("predicted", TheatreLine::predicted),
            new Column("rupture", TheatreLine::risk),
            new Column("plan", TheatreLine::state),
            new Column("first reason", TheatreLine::reason));

    private TheatreTable() {}

    /** The table with a heading line. */
    public static String of(List<TheatreLine> lines) {
        List<Integer> widths =
                COLUMNS.stream().map(column -> width(column, lines)).toList();
        String heading = row(COLUMNS.stream().map(Column::title).toList(), widths);
        String rule = row(widths.stream().map("-"::repeat).toList(), widths);
        String body = lines.stream()
                .map(line -> row(
                        COLUMNS.stream()
                                .map(column -> column.cell().apply(line))
                                .toList(),
                        widths))
                .collect(Collectors.joining());
        return heading + rule + body;
    }

    private static int width(Column column, List<TheatreLine> lines) {
        int widest = lines.stream()
                .mapToInt(line -> column.cell().apply(line).length())
                .max()
                .orElse(0);
        return Math.max(column.title().length(), widest);
    }

    private static String row(List<String> cells, List<Integer> widths) {
        StringBuilder row = new StringBuilder();
        for (int index = 0; index < cells.size(); index++) {
            row.append(cells.get(index))
                    .append(" ".repeat(widths.get(index) - cells.get(index).length() + 2));
        }
        return row.toString().stripTrailing() + System.lineSeparator();
    }
}

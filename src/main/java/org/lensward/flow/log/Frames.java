package org.lensward.flow.log;

/** A failure's kind and the places it passed. */
final class Frames {

    private static final int MOST = 60;

    private Frames() {}

    static void append(StringBuilder text, String kind, StackTraceElement[] frames) {
        text.append(text.isEmpty() ? "" : "caused by ").append(kind).append('\n');
        for (int index = 0; index < Math.min(frames.length, MOST); index++) {
            text.append("\tat ").append(frames[index]).append('\n');
        }
    }
}

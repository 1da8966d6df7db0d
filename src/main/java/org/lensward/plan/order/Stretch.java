package org.lensward.plan.order;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.lensward.quantity.Dioptres;

/**
 * The best order of a few eyes by dynamic programming over sets (Held and Karp, J SIAM 1962;10:196): the cheapest way to have ordered a set
 * of eyes with a given one last.
 */
final class Stretch {

    private static final long NEVER = Long.MAX_VALUE / 4;
    private static final long NAMESAKES = 1_000_000;
    private static final long SIMILAR = 1_000;

    private final List<ListedEye> eyes;
    private final List<ListedEye> before;
    private final Dioptres similar;
    private final long[][] cost;
    private final int[][] previous;

    /**
     * For a stretch of a list.
     *
     * @param eyes in the order to keep where nothing speaks against it, sorted by place
     * @param before what has been ordered already
     */
    Stretch(List<ListedEye> eyes, List<ListedEye> before, Dioptres similar) {
        this.eyes = eyes;
        this.before = List.copyOf(before);
        this.similar = similar;
        this.cost = new long[1 << eyes.size()][eyes.size()];
        this.previous = new int[1 << eyes.size()][eyes.size()];
    }

    List<ListedEye> best() {
        for (long[] row : cost) {
            Arrays.fill(row, NEVER);
        }
        for (int first = 0; first < eyes.size(); first++) {
            if (mayFollow(0, first)) {
                cost[1 << first][first] = moved(0, first) + joined(first);
            }
        }
        for (int set = 1; set < cost.length; set++) {
            for (int last = 0; last < eyes.size(); last++) {
                if (cost[set][last] < NEVER) {
                    extend(set, last);
                }
            }
        }
        return traced();
    }

    private void extend(int set, int last) {
        for (int next = 0; next < eyes.size(); next++) {
            if ((set & 1 << next) == 0 && mayFollow(set, next)) {
                long total =
                        cost[set][last] + beside(eyes.get(last), eyes.get(next)) + moved(Integer.bitCount(set), next);
                if (total < cost[set | 1 << next][next]) {
                    cost[set | 1 << next][next] = total;
                    previous[set | 1 << next][next] = last;
                }
            }
        }
    }

    /** Only when everything that belongs before it has had its turn. */
    private boolean mayFollow(int set, int next) {
        for (int other = 0; other < eyes.size(); other++) {
            boolean waiting = (set & 1 << other) == 0;
            if (waiting && eyes.get(other).place().compareTo(eyes.get(next).place()) < 0) {
                return false;
            }
        }
        return true;
    }

    private static long moved(int position, int eye) {
        return Math.abs(position - eye);
    }

    private long joined(int first) {
        return before.isEmpty() ? 0 : beside(before.get(before.size() - 1), eyes.get(first));
    }

    private long beside(ListedEye one, ListedEye other) {
        return (one.isNamesakeOf(other) ? NAMESAKES : 0) + (one.hasPowerLike(other, similar) ? SIMILAR : 0);
    }

    private List<ListedEye> traced() {
        int set = cost.length - 1;
        int last = 0;
        for (int candidate = 1; candidate < eyes.size(); candidate++) {
            last = cost[set][candidate] < cost[set][last] ? candidate : last;
        }
        List<ListedEye> order = new ArrayList<>();
        while (set != 0) {
            order.add(0, eyes.get(last));
            int rest = set & ~(1 << last);
            last = previous[set][last];
            set = rest;
        }
        return order;
    }
}

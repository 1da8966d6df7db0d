package org.lensward.risk.opening;

import org.lensward.quantity.Millimetres;

/** What an opening, as it was made, means for the planned lens. The surgeon decides. */
public sealed interface ImplantAdvice {

    /** As a sentence says it. */
    String words();

    /** The planned lens may go in. */
    record GoesIn() implements ImplantAdvice {
        @Override
        public String words() {
            return "the planned lens may go in";
        }
    }

    /**
     * Widen the opening before the lens goes in, where it lies off centre on the side of the lens's axis: there it costs no cover. Then
     * measure and judge again.
     *
     * @param least diameter to reach
     * @param most diameter that still leaves the technique's cover all round
     */
    record EnlargeFirst(Millimetres least, Millimetres most) implements ImplantAdvice {
        EnlargeFirst and(EnlargeFirst other) {
            return new EnlargeFirst(
                    least.compareTo(other.least) > 0 ? least : other.least,
                    most.compareTo(other.most) < 0 ? most : other.most);
        }

        @Override
        public String words() {
            return "widen the opening first, to " + least.rounded() + " up to " + most.rounded();
        }
    }

    /** Neither a multifocal nor an extended-focus lens. */
    record ChooseMonofocal() implements ImplantAdvice {
        @Override
        public String words() {
            return "choose a monofocal lens";
        }
    }

    /** A lens without cylinder. */
    record ChooseNonToric() implements ImplantAdvice {
        @Override
        public String words() {
            return "choose a lens without cylinder";
        }
    }

    /**
     * Part of the optic's edge stands free.
     *
     * @param overlap how the opening lies over the optic
     */
    record CoverIncomplete(Overlap overlap) implements ImplantAdvice {
        @Override
        public String words() {
            return "the capsule leaves " + overlap.freeEdge().rounded() + " of the optic's edge free";
        }
    }

    /**
     * Something to find out or decide first.
     *
     * @param what it is
     */
    record Settle(String what) implements ImplantAdvice {
        @Override
        public String words() {
            return "settle first: " + what;
        }
    }
}

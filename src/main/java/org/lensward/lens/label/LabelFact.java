package org.lensward.lens.label;

import java.time.LocalDate;

/** One thing that one scan says. */
sealed interface LabelFact {

    /** What it is, in words. */
    String word();

    /** What it says, as a person would read it. */
    String said();

    /**
     * Which device.
     *
     * @param issuer whose identifier
     * @param said the identifier
     */
    record Device(Issuer issuer, String said) implements LabelFact {
        @Override
        public String word() {
            return "device";
        }
    }

    /** Batch. */
    record Lot(String said) implements LabelFact {
        @Override
        public String word() {
            return "lot";
        }
    }

    /** Number of the single lens. */
    record Serial(String said) implements LabelFact {
        @Override
        public String word() {
            return "serial number";
        }
    }

    /** Last day of use. */
    record Expiry(LocalDate day) implements LabelFact {
        @Override
        public String word() {
            return "expiry";
        }

        @Override
        public String said() {
            return day.toString();
        }
    }

    /** Day of manufacture. */
    record Production(LocalDate day) implements LabelFact {
        @Override
        public String word() {
            return "day of production";
        }

        @Override
        public String said() {
            return day.toString();
        }
    }

    /** Pieces. */
    record Quantity(int pieces) implements LabelFact {
        @Override
        public String word() {
            return "quantity";
        }

        @Override
        public String said() {
            return Integer.toString(pieces);
        }
    }

    /** A HIBC secondary barcode's reference to its primary: the primary's check character. */
    record Link(char character) implements LabelFact {
        @Override
        public String word() {
            return "link character";
        }

        @Override
        public String said() {
            return String.valueOf(character);
        }
    }
}

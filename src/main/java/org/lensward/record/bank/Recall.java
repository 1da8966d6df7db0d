package org.lensward.record.bank;

import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.lensward.finding.Evidence;
import org.lensward.finding.Finding;
import org.lensward.lens.stock.LensUnit;
import org.lensward.lens.stock.UnitState;

/**
 * Where every carton of a recalled lot is. A carton of which the record does not say the lot is listed too, with a finding.
 *
 * @param lot the recalled lot
 * @param units every carton, those that cannot be read whole among them
 * @param findings what is unknown or contradictory; one that withholds means the answer cannot be relied on without the remedy
 */
public record Recall(String lot, List<RecalledUnit> units, List<Finding> findings) {

    public Recall {
        units = List.copyOf(units);
        findings = List.copyOf(findings);
    }

    /**
     * One carton.
     *
     * @param evidence its Device
     * @param unit the carton, where it can be read whole
     * @param certain whether the record says that it is of the lot; otherwise it only may be
     * @param location where it lies, as far as recorded
     * @param patients in whom it is, by every statement of the record
     * @param operations the Procedures that say so
     */
    public record RecalledUnit(
            Evidence evidence,
            Optional<LensUnit> unit,
            boolean certain,
            Optional<String> location,
            List<String> patients,
            List<String> operations) {

        public RecalledUnit {
            patients = List.copyOf(patients);
            operations = List.copyOf(operations);
        }

        /** Whether any statement has it in an eye. */
        public boolean isImplanted() {
            return !patients.isEmpty()
                    || unit.filter(each -> each.state() == UnitState.IMPLANTED).isPresent();
        }

        /** Names no patient. */
        @Override
        public String toString() {
            return "RecalledUnit[" + evidence + "]";
        }
    }

    /** Those in an eye. */
    public Stream<RecalledUnit> implanted() {
        return units.stream().filter(RecalledUnit::isImplanted);
    }

    /** Those certainly of the lot, on a shelf or in theatre, in any state in which they could still be used. */
    public Stream<LensUnit> usable() {
        return units.stream()
                .filter(each -> each.certain() && !each.isImplanted())
                .flatMap(each -> each.unit().stream())
                .filter(each -> each.state() != UnitState.QUARANTINED && each.state() != UnitState.WASTED);
    }

    /** Names no patient. */
    @Override
    public String toString() {
        return "Recall[" + lot + ", " + units.size() + " units]";
    }
}

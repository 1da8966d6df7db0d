package org.lensward.flow;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import org.hl7.fhir.r4.model.Bundle;
import org.hl7.fhir.r4.model.Procedure;
import org.hl7.fhir.r4.model.Resource;
import org.lensward.record.Shelf;
import org.lensward.record.StoredPlan;

/**
 * What would be written about one booking, in names of resources and elements, without their content.
 *
 * @param booking such as {@code ServiceRequest/b1}
 * @param at when it was planned
 * @param state ready, provisional or withheld; empty where a plan is only taken back
 * @param fingerprint of the plan
 * @param pieces each resource of the transaction
 */
public record WouldWrite(
        String booking, Instant at, Optional<String> state, Optional<String> fingerprint, List<Piece> pieces) {

    /**
     * One resource.
     *
     * @param resource such as {@code Procedure/plan-b1}
     * @param isNew whether the record has none of that name
     * @param differs the elements that differ from what stands, such as {@code status}; empty if new or the same
     */
    public record Piece(String resource, boolean isNew, List<String> differs) {}

    static WouldWrite of(String booking, Instant at, Bundle transaction, Bundle gathered) {
        Shelf standing = new Shelf(gathered);
        Optional<Procedure> plan = transaction.getEntry().stream()
                .map(Bundle.BundleEntryComponent::getResource)
                .filter(Procedure.class::isInstance)
                .map(Procedure.class::cast)
                .filter(each -> each.getStatus() == Procedure.ProcedureStatus.PREPARATION)
                .findFirst();
        return new WouldWrite(
                booking,
                at,
                plan.map(StoredPlan::state),
                plan.map(StoredPlan::fingerprint),
                transaction.getEntry().stream()
                        .map(each -> piece(each.getResource(), standing))
                        .toList());
    }

    private static Piece piece(Resource written, Shelf standing) {
        String name = Shelf.name(written);
        return standing.all(Resource.class)
                .filter(each -> Shelf.name(each).equals(name))
                .findFirst()
                .map(old -> new Piece(name, false, Differences.between(old, written)))
                .orElseGet(() -> new Piece(name, true, List.of()));
    }

    @Override
    public String toString() {
        return booking + " " + state.orElse("taken back") + "\n"
                + pieces.stream().map(WouldWrite::line).collect(Collectors.joining("\n"));
    }

    private static String line(Piece piece) {
        String what = piece.isNew()
                ? "new"
                : piece.differs().isEmpty() ? "as it stands" : "changed: " + String.join(", ", piece.differs());
        return "  " + piece.resource() + " " + what;
    }
}

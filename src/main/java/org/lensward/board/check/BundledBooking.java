package org.lensward.board.check;

import ca.uhn.fhir.context.FhirContext;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.BiFunction;
import org.hl7.fhir.r4.model.Bundle;
import org.hl7.fhir.r4.model.Bundle.BundleEntryComponent;
import org.hl7.fhir.r4.model.Bundle.BundleType;
import org.hl7.fhir.r4.model.Identifier;
import org.hl7.fhir.r4.model.Procedure;
import org.hl7.fhir.r4.model.Resource;
import org.hl7.fhir.r4.model.Task;
import org.lensward.finding.Outcome;
import org.lensward.flow.BundlePlanning;
import org.lensward.lens.stock.LensUnit;
import org.lensward.record.PlanKey;
import org.lensward.record.Publication;
import org.lensward.record.Shelf;
import org.lensward.record.bank.LensBank;
import org.lensward.record.check.CheckAnswer;
import org.lensward.record.check.LensChecks;

/**
 * A booking in Bundles. What is written goes behind what was read and into one transaction, where each resource stands once, as it is in
 * the end. A plan or a check that came in a transaction Bundle carries no version yet: it is numbered as a new server would number it.
 */
public final class BundledBooking implements CheckedBooking {

    private final Bundle all;
    private final String booking;
    private final LensChecks checks;
    private final FhirContext fhir;
    private final Map<String, Integer> versions = new LinkedHashMap<>();
    private final Map<String, BundleEntryComponent> written = new LinkedHashMap<>();

    public BundledBooking(Bundle all, String booking, LensChecks checks, FhirContext fhir) {
        this.all = all;
        this.booking = booking;
        this.checks = checks;
        this.fhir = fhir;
        all.getEntry().stream().filter(BundleEntryComponent::hasResource).forEach(this::number);
    }

    /** With the plan the booking has now. */
    public BundledBooking planned(BundlePlanning planning) {
        planning.plan(all).stream()
                .filter(each -> Shelf.name(each.booked().request()).equals(booking))
                .forEach(each -> {
                    if (each.publication() instanceof Publication.Write write) {
                        take(write.bundle());
                    }
                });
        return this;
    }

    @Override
    public String booking() {
        return booking;
    }

    @Override
    public Outcome<List<LensUnit>> units() {
        return LensBank.units(fhir, new Shelf(all));
    }

    @Override
    public CheckAnswer act(BiFunction<LensChecks, Bundle, CheckAnswer> action) {
        CheckAnswer answer = action.apply(checks, all);
        if (answer instanceof CheckAnswer.Write write) {
            take(write.transaction());
        }
        return answer;
    }

    @Override
    public Optional<Bundle> written() {
        Bundle transaction = new Bundle().setType(BundleType.TRANSACTION);
        written.values().forEach(transaction::addEntry);
        return Optional.of(transaction);
    }

    /** The first guard stands, for it names what was read; the last content stands. */
    private void take(Bundle transaction) {
        for (BundleEntryComponent entry : transaction.getEntry()) {
            BundleEntryComponent out = unversioned(entry);
            Optional.ofNullable(written.put(entry.getRequest().getUrl(), out)).ifPresent(first -> out.getRequest()
                    .setIfMatch(first.getRequest().getIfMatch()));
            BundleEntryComponent kept = unversioned(entry);
            number(kept);
            all.addEntry(kept);
        }
    }

    private static BundleEntryComponent unversioned(BundleEntryComponent entry) {
        BundleEntryComponent copy = entry.copy();
        copy.getResource().getMeta().setVersionId(null);
        return copy;
    }

    private void number(BundleEntryComponent entry) {
        Resource resource = entry.getResource();
        if (!isOfThePlan(resource)) {
            return;
        }
        String name = Shelf.name(resource);
        String given = resource.getMeta().getVersionId();
        if (given != null && given.matches("[0-9]{1,9}")) {
            versions.put(name, Integer.valueOf(given));
        } else if (given == null && entry.getRequest().hasMethod()) {
            resource.getMeta().setVersionId(String.valueOf(versions.merge(name, 1, Integer::sum)));
        }
    }

    private boolean isOfThePlan(Resource resource) {
        Identifier key = PlanKey.of(booking).identifier();
        return resource instanceof Task task && task.getIdentifier().stream().anyMatch(key::equalsDeep)
                || resource instanceof Procedure plan
                        && plan.getIdentifier().stream().anyMatch(key::equalsDeep);
    }
}

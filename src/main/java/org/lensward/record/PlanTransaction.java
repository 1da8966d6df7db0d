package org.lensward.record;

import ca.uhn.fhir.model.api.TemporalPrecisionEnum;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Date;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TimeZone;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.hl7.fhir.r4.model.Base;
import org.hl7.fhir.r4.model.Bundle;
import org.hl7.fhir.r4.model.Bundle.BundleType;
import org.hl7.fhir.r4.model.Bundle.HTTPVerb;
import org.hl7.fhir.r4.model.CodeableConcept;
import org.hl7.fhir.r4.model.Identifier;
import org.hl7.fhir.r4.model.InstantType;
import org.hl7.fhir.r4.model.Procedure;
import org.hl7.fhir.r4.model.Procedure.ProcedureStatus;
import org.hl7.fhir.r4.model.Provenance;
import org.hl7.fhir.r4.model.Provenance.ProvenanceEntityRole;
import org.hl7.fhir.r4.model.Reference;
import org.hl7.fhir.r4.model.Resource;
import org.hl7.fhir.r4.model.ServiceRequest;
import org.hl7.fhir.r4.model.Task;
import org.lensward.finding.Evidence;
import org.lensward.plan.EyePlan;

/** One plan as one FHIR transaction: lasting ids, PUT by id, each guarded by the version it replaces. */
public final class PlanTransaction {

    private static final String REPLACES = Systems.extension("replaces");

    private final Shelf shelf;
    private final Instant now;

    /**
     * Against what the record holds.
     *
     * @param shelf the booking's gathered resources, its earlier plan among them
     * @param now the time to write on the trail
     */
    public PlanTransaction(Shelf shelf, Instant now) {
        this.shelf = shelf;
        this.now = now;
    }

    /** What to write for this plan; nothing if the record already holds it or the operation has begun. */
    public Publication publish(BookedCase booked, EyePlan plan) {
        PlanKey key = PlanKey.of(booked.request());
        Map<String, Resource> earlier = earlier(key);
        Optional<Procedure> standing =
                Optional.ofNullable(earlier.get(key.plan().getReference())).map(Procedure.class::cast);
        if (standing.filter(each -> begun(each)).isPresent()) {
            return new Publication.Nothing(Publication.Reason.OPERATION_BEGUN);
        }
        List<Resource> resources = new ArrayList<>(PlanResources.of(booked, plan));
        if (standing.filter(each -> holds(each, plan)).isPresent() && isWhole(earlier, resources)) {
            return new Publication.Nothing(Publication.Reason.UNCHANGED);
        }
        List<Resource> retired = retire(
                earlier,
                resources,
                "The plan was replaced by " + plan.fingerprint().brief() + ".");
        replaced(resources, Stream.concat(retired.stream(), stopped(earlier).stream()));
        resources.addAll(retired);
        resources.add(trail(key, plan, resources));
        return new Publication.Write(transaction(resources, earlier));
    }

    /** What to write for a booking that was withdrawn: every piece of its plan is taken back. */
    public Publication withdraw(ServiceRequest booking) {
        Map<String, Resource> earlier = earlier(PlanKey.of(booking));
        if (earlier.values().stream().anyMatch(each -> each instanceof Procedure plan && begun(plan))) {
            return new Publication.Nothing(Publication.Reason.OPERATION_BEGUN);
        }
        List<Resource> retired = retire(earlier, List.of(), "The booking was withdrawn.");
        return retired.isEmpty()
                ? new Publication.Nothing(Publication.Reason.NO_PLAN)
                : new Publication.Write(transaction(retired, earlier));
    }

    private Map<String, Resource> earlier(PlanKey key) {
        Map<String, Resource> earlier = new LinkedHashMap<>();
        shelf.all(Resource.class)
                .filter(resource -> identifiers(resource).anyMatch(key.identifier()::equalsDeep))
                .forEach(resource -> earlier.put(Shelf.name(resource), resource));
        return earlier;
    }

    private static Stream<Identifier> identifiers(Resource resource) {
        List<Base> found = resource.fhirType().equals("Provenance")
                ? List.of()
                : Optional.ofNullable(resource.getNamedProperty("identifier"))
                        .map(property -> property.getValues())
                        .orElse(List.of());
        return found.stream().filter(Identifier.class::isInstance).map(Identifier.class::cast);
    }

    private static boolean begun(Procedure plan) {
        return plan.getStatus() != ProcedureStatus.PREPARATION && plan.getStatus() != ProcedureStatus.NOTDONE;
    }

    private static boolean holds(Procedure standing, EyePlan plan) {
        return standing.getStatus() == ProcedureStatus.PREPARATION
                && plan.fingerprint().hex().equals(standing.getExtensionString(PlanResources.FINGERPRINT));
    }

    /**
     * Whether the plan that stands is there with all its pieces and none of an earlier plan beside it. A server that takes a transaction
     * piece by piece may have refused some. Checks have a life of their own.
     */
    private static boolean isWhole(Map<String, Resource> earlier, List<Resource> resources) {
        return resources.stream().allMatch(each -> earlier.containsKey(target(each)))
                && retire(earlier, resources, "").stream().allMatch(Task.class::isInstance);
    }

    private static List<Resource> retire(Map<String, Resource> earlier, List<Resource> current, String reason) {
        List<String> kept = current.stream().map(PlanTransaction::target).toList();
        return earlier.entrySet().stream()
                .filter(each -> !kept.contains(each.getKey()))
                .flatMap(each -> Retirement.of(each.getValue(), reason).stream())
                .toList();
    }

    private static void replaced(List<Resource> resources, Stream<Resource> retired) {
        List<Resource> checks = retired.filter(Task.class::isInstance).toList();
        for (Resource resource : resources) {
            if (resource instanceof Task check) {
                checks.stream()
                        .filter(old -> !target(old).equals(target(check)))
                        .forEach(old -> check.addExtension(REPLACES, new Reference(target(old))));
            }
        }
    }

    /** Checks that ended in a stop which nothing has taken the place of yet. */
    private static List<Resource> stopped(Map<String, Resource> earlier) {
        List<Task> checks = earlier.values().stream()
                .filter(Task.class::isInstance)
                .map(Task.class::cast)
                .toList();
        Set<String> taken = checks.stream()
                .flatMap(each -> each.getExtensionsByUrl(REPLACES).stream())
                .map(each -> Shelf.name((Reference) each.getValue()))
                .collect(Collectors.toSet());
        return checks.stream()
                .filter(each -> Retirement.STOPPED.contains(each.getStatus()))
                .filter(each -> !taken.contains(target(each)))
                .map(Resource.class::cast)
                .toList();
    }

    private Provenance trail(PlanKey key, EyePlan plan, List<Resource> written) {
        Provenance trail = new Provenance();
        trail.setId(key.versionedId("trail", plan.fingerprint()));
        trail.getMeta().addProfile(Systems.profile("plan-provenance"));
        written.forEach(each -> trail.addTarget(new Reference(target(each))));
        trail.setRecordedElement(
                new InstantType(Date.from(now), TemporalPrecisionEnum.SECOND, TimeZone.getTimeZone("UTC")));
        trail.setActivity(new CodeableConcept().setText("Lens planning, policy " + plan.policyVersion()));
        trail.addAgent().setWho(new Reference().setDisplay("Lensward"));
        for (Evidence source : plan.basis()) {
            trail.addEntity().setRole(ProvenanceEntityRole.SOURCE).setWhat(versioned(source));
        }
        return trail;
    }

    /** A digest of ours is no version that anyone could fetch. */
    private static Reference versioned(Evidence source) {
        return new Reference(
                Evidences.isOfServer(source) ? source.resource() + "/_history/" + source.version() : source.resource());
    }

    private static Bundle transaction(List<Resource> resources, Map<String, Resource> earlier) {
        Bundle bundle = new Bundle().setType(BundleType.TRANSACTION);
        for (Resource resource : resources) {
            Bundle.BundleEntryComponent entry = bundle.addEntry().setResource(resource);
            entry.getRequest().setMethod(HTTPVerb.PUT).setUrl(target(resource));
            Optional.ofNullable(earlier.get(target(resource)))
                    .map(old -> old.getMeta().getVersionId())
                    .ifPresent(version -> entry.getRequest().setIfMatch("W/\"" + version + "\""));
        }
        return bundle;
    }

    private static String target(Resource resource) {
        return resource.fhirType() + "/" + resource.getIdElement().getIdPart();
    }
}

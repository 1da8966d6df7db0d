package org.lensward.record.incoming;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import org.hl7.fhir.r4.model.InstantType;
import org.hl7.fhir.r4.model.Observation;
import org.hl7.fhir.r4.model.Resource;
import org.lensward.eye.Laterality;
import org.lensward.finding.FindingCode;
import org.lensward.record.SidedCodes;

/** Results as Observations: one for each group, its first result the value and the others components. */
public final class Results {

    private Results() {}

    /**
     * The Observations.
     *
     * @param results in the order they were sent
     * @param ids the lasting id of a result
     * @param issued when they were sent
     */
    public static List<Resource> observations(List<Result> results, Function<Result, String> ids, InstantType issued) {
        Map<String, List<Result>> groups = new LinkedHashMap<>();
        for (Result result : results) {
            String key = result.group().isEmpty() ? result.place() : "group " + result.group();
            groups.computeIfAbsent(key, name -> new ArrayList<>()).add(result);
        }
        List<Resource> observations = new ArrayList<>();
        for (List<Result> group : groups.values()) {
            observations.add(observation(group, ids.apply(group.get(0))).setIssuedElement(issued));
        }
        return observations;
    }

    private static Observation observation(List<Result> group, String id) {
        Result first = group.get(0);
        Observation observation = new Observation();
        observation.setId(id);
        observation.setStatus(first.status());
        observation.setCode(first.code());
        first.value().ifPresent(observation::setValue);
        first.taken().ifPresent(observation::setEffective);
        first.method().ifPresent(observation::setMethod);
        eye(group).ifPresent(eye -> observation.setBodySite(SidedCodes.concept(eye)));
        for (Result other : group.subList(1, group.size())) {
            alike(first, other);
            observation
                    .addComponent()
                    .setCode(other.code())
                    .setValue(other.value().orElse(null));
        }
        return observation;
    }

    private static Optional<Laterality> eye(List<Result> group) {
        List<Laterality> eyes =
                group.stream().flatMap(each -> each.eye().stream()).distinct().toList();
        if (eyes.size() > 1) {
            throw new RefusedInput(
                    FindingCode.MESSAGE_EYES_CONFLICT, group.get(0).place(), "one group", "right and left");
        }
        return eyes.stream().findFirst();
    }

    private static void alike(Result first, Result other) {
        boolean sameTime = first.taken()
                .map(each -> each.getValueAsString())
                .equals(other.taken().map(each -> each.getValueAsString()));
        if (first.status() != other.status() || !sameTime) {
            throw new RefusedInput(
                    FindingCode.MESSAGE_UNREADABLE,
                    other.place(),
                    other.place(),
                    "one group has two states or two times");
        }
    }
}

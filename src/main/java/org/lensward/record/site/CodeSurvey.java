package org.lensward.record.site;

import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.hl7.fhir.r4.model.Bundle;
import org.hl7.fhir.r4.model.CodeableConcept;
import org.hl7.fhir.r4.model.Coding;
import org.hl7.fhir.r4.model.Identifier;
import org.hl7.fhir.r4.model.Observation;
import org.hl7.fhir.r4.model.Patient;
import org.hl7.fhir.r4.model.Resource;
import org.lensward.record.Changes;
import org.lensward.record.Doubt;
import org.lensward.record.Shelf;
import org.lensward.record.Vocabulary;
import org.lensward.record.Vocabulary.Place;
import org.lensward.record.site.SiteTranslation.Translated;
import org.lensward.record.site.SurveyLine.State;

/** Which codes, units, body sites and identifier systems of a record are understood. Holds codes and counts, nothing of a patient. */
public final class CodeSurvey {

    private static final String BY_MAP = " (site's map)";
    private static final String BESIDE = "(by the code beside it)";

    private final SiteCodes codes;
    private final EyeObservations eyes;
    private final Map<SurveyLine, Integer> met = new HashMap<>();

    private CodeSurvey(SiteCodes codes, EyeObservations eyes) {
        this.codes = codes;
        this.eyes = eyes;
    }

    /** Surveys every resource but those Lensward wrote. */
    public static CodeSurvey of(Bundle record, SiteCodes codes) {
        // Codes alone: what a number measures must be known to judge its unit, which must still be as it was sent.
        Translated translated = new SiteTranslation(codes.withoutUnits()).translate(record);
        CodeSurvey survey = new CodeSurvey(codes, new EyeObservations(new Shelf(translated.bundle())));
        List<Resource> before = Resources.of(record).toList();
        List<Resource> after = Resources.of(translated.bundle()).toList();
        for (int index = 0; index < before.size(); index++) {
            if (!Changes.isOurs(before.get(index))) {
                survey.count(before.get(index), after.get(index));
            }
        }
        translated.doubts().forEach(survey::count);
        return survey;
    }

    /** What was met, what needs work first. */
    public List<SurveyLine> lines() {
        return met.entrySet().stream()
                .map(each -> {
                    SurveyLine line = each.getKey();
                    return new SurveyLine(
                            line.state(), line.onEye(), line.where(), line.what(), line.as(), each.getValue());
                })
                .sorted(Comparator.comparing(SurveyLine::state)
                        .thenComparing(SurveyLine::onEye, Comparator.reverseOrder())
                        .thenComparing(SurveyLine::where)
                        .thenComparing(SurveyLine::what)
                        .thenComparing(SurveyLine::as))
                .toList();
    }

    /** Whether nothing that sits on a measurement of an eye is unmapped or ambiguous. */
    public boolean allUnderstoodOnEyes() {
        return met.keySet().stream().noneMatch(line -> line.onEye() && line.state() != State.MAPPED);
    }

    private void count(Resource before, Resource after) {
        boolean onEye = onEye(after);
        CodeInUse.of(before).forEach(use -> count(use, onEye));
        UnitInUse.of(after).forEach(use -> unit(use, onEye));
        if (before instanceof Patient patient) {
            patient.getIdentifier().forEach(this::identifier);
        }
    }

    private boolean onEye(Resource resource) {
        return resource instanceof Observation observation && eyes.mayBe(observation);
    }

    private void count(CodeInUse use, boolean onEye) {
        List<Coding> coded =
                use.concept().getCoding().stream().filter(Coding::hasCode).toList();
        boolean understood =
                coded.stream().anyMatch(each -> as(use.place(), each).isPresent());
        for (Coding coding : coded) {
            Optional<String> as = as(use.place(), coding);
            boolean ambiguous =
                    codes.meanings(coding).size() > 1 || codes.eyes(coding).size() > 1;
            if (!ambiguous) { // counted where it was found to be so
                String name = ConceptTranslation.name(coding);
                State state = as.isPresent() || understood ? State.MAPPED : State.UNMAPPED;
                add(state, onEye, use.place().toString(), name, as.orElse(understood ? BESIDE : ""));
            }
        }
        if (coded.isEmpty()) {
            add(State.UNMAPPED, onEye, use.place().toString(), "(words without a code)", "");
        }
    }

    private Optional<String> as(Place place, Coding coding) {
        Optional<String> standard = Vocabulary.meaning(place, coding);
        if (standard.isPresent()) {
            return standard;
        }
        Set<SiteEye> eyes = codes.eyes(coding);
        if (place == Place.BODY_SITE && eyes.size() == 1) {
            return Optional.of(eyes.iterator().next() + BY_MAP);
        }
        Set<Meaning> meanings = codes.meanings(coding);
        return meanings.size() != 1
                ? Optional.empty()
                : Vocabulary.meaning(place, meanings.iterator().next().coding())
                        .map(words -> words + carried(coding) + BY_MAP);
    }

    private String carried(Coding coding) {
        Set<SiteEye> eyes = codes.carried(new CodeableConcept(coding.copy()));
        return eyes.size() == 1 ? ", " + eyes.iterator().next() : "";
    }

    private void unit(UnitInUse use, boolean onEye) {
        String what = use.unit().isEmpty() ? "(none)" : use.unit();
        String where = "unit of " + use.kind().name().toLowerCase(Locale.ROOT);
        List<MappedUnit> readings = codes.readings(use.kind(), use.unit());
        if (readings.size() > 1) {
            add(State.AMBIGUOUS, onEye, where, what, "");
        } else if (!readings.isEmpty()) {
            add(State.MAPPED, onEye, where, what, readings.get(0) + BY_MAP);
        } else {
            boolean known = use.kind().factor(use.unit()).isPresent();
            String as = use.kind().valid(use.unit()) ? "UCUM" : known ? "read with a note" : "";
            add(known ? State.MAPPED : State.UNMAPPED, onEye, where, what, as);
        }
    }

    private void identifier(Identifier identifier) {
        String system = identifier.hasSystem() ? identifier.getSystem() : "(without a system)";
        boolean counts = codes.identifiers().isEmpty() || identifier.hasSystem() && codes.counts(system);
        String as = codes.identifiers().isEmpty() ? "counts, as all do" : counts ? "counts" + BY_MAP : "";
        add(counts ? State.MAPPED : State.UNMAPPED, false, "identifier", system, as);
    }

    private void count(Doubt doubt) {
        String what = doubt.particulars().isEmpty()
                ? "(none that counts)"
                : doubt.particulars().get(0);
        String as = String.join(" / ", doubt.particulars().stream().skip(1).toList());
        add(State.AMBIGUOUS, onEye(doubt.resource()), doubt.resource().fhirType(), what, as);
    }

    private void add(State state, boolean onEye, String where, String what, String as) {
        met.merge(new SurveyLine(state, onEye, where, what, as, 0), 1, Integer::sum);
    }
}

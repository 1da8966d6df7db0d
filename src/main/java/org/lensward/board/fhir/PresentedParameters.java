package org.lensward.board.fhir;

import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.hl7.fhir.r4.model.BooleanType;
import org.hl7.fhir.r4.model.CodeableConcept;
import org.hl7.fhir.r4.model.DateTimeType;
import org.hl7.fhir.r4.model.DateType;
import org.hl7.fhir.r4.model.Identifier;
import org.hl7.fhir.r4.model.Quantity;
import org.hl7.fhir.r4.model.Reference;
import org.jspecify.annotations.Nullable;
import org.lensward.board.step.Implanted;
import org.lensward.board.step.Scanned;
import org.lensward.check.BackUp;
import org.lensward.check.Carton;
import org.lensward.check.CheckedLens;
import org.lensward.check.Exemption;
import org.lensward.check.EyesRead;
import org.lensward.check.Identity;
import org.lensward.check.PackageState;
import org.lensward.check.People;
import org.lensward.check.Presented;
import org.lensward.eye.Laterality;
import org.lensward.lens.KitRole;
import org.lensward.quantity.Degrees;
import org.lensward.quantity.Dioptres;
import org.lensward.record.EyeCodes;
import org.lensward.record.Shelf;
import org.lensward.record.Systems;

/** What people present at a checkpoint, as Parameters: {@link Presented}'s fields. What is absent was not stated. */
final class PresentedParameters {

    private static final Set<String> PLACES = Set.of("booking", "sheet", "biometry", "mark");

    private final Given given;

    PresentedParameters(Given given) {
        this.given = given;
    }

    /** With the carton that was scanned, at the time that was told. */
    Presented with(Scanned scanned) {
        return with(scanned, at());
    }

    /** With the carton that was scanned, at a time that is known better than anybody tells it. */
    Presented with(Scanned scanned, OffsetDateTime at) {
        return new Presented(
                patient(),
                eyes(),
                given.text("fingerprint"),
                scanned.presented(box(), one(given, "package", PackageState.values(), PackageState::toString)),
                given.one("axis", Quantity.class).map(this::axis),
                allergies(),
                given.parts("back-up").map(PresentedParameters::backUp).toList(),
                new People(given.text("reader"), given.text("second")),
                at);
    }

    /** Whether a clinician goes on in spite of a difference. */
    Exemption exemption() {
        return given.part("override")
                .map(signed -> signed.only("clinician", "reason", "second"))
                .<Exemption>map(signed -> signed.checked(
                        "clinician",
                        () -> new Exemption.Signed(
                                signed.text("clinician").orElse(""),
                                signed.text("reason").orElse(""),
                                signed.text("second").orElse(""))))
                .orElseGet(Exemption::none);
    }

    /** At sign-out, who implanted the lens and where. */
    Optional<Implanted> implanted() {
        return given.part("implanted")
                .map(by -> by.only("surgeon", "hospital"))
                .map(by -> new Implanted(
                        by.required("surgeon", by.text("surgeon")), by.required("hospital", by.text("hospital"))));
    }

    private Identity patient() {
        Set<Identity.Number> numbers = given.all("patient-identifier", Identifier.class)
                .map(each -> given.checked(
                        "patient-identifier", () -> new Identity.Number(text(each.getSystem()), text(each.getValue()))))
                .collect(Collectors.toSet());
        Optional<LocalDate> birth = given.one("birth-date", DateType.class)
                .map(each -> given.checked("birth-date", () -> LocalDate.parse(each.getValueAsString())));
        return new Identity(numbers, birth);
    }

    private EyesRead eyes() {
        List<Given> stated =
                given.parts("eye").map(each -> each.only("source", "value")).toList();
        for (Given each : stated) {
            if (each.text("source").filter(PLACES::contains).isEmpty()) {
                throw each.refused("source", "is none of booking, sheet, biometry, mark");
            }
        }
        return new EyesRead(eye(stated, "booking"), eye(stated, "sheet"), eye(stated, "biometry"), eye(stated, "mark"));
    }

    private Optional<Laterality> eye(List<Given> stated, String place) {
        List<Laterality> eyes = stated.stream()
                .filter(each -> each.text("source").filter(place::equals).isPresent())
                .map(each -> each.required(
                        "value", each.one("value", CodeableConcept.class).flatMap(EyeCodes::eye)))
                .toList();
        if (eyes.size() > 1) {
            throw given.refused("eye", "is stated twice of the " + place);
        }
        return eyes.stream().findFirst();
    }

    private Optional<Carton.BoxRead> box() {
        return given.part("box")
                .map(box -> box.only("model", "power", "cylinder", "reader"))
                .map(box -> new Carton.BoxRead(lens(box), box.text("reader").orElse("")));
    }

    private static BackUp backUp(Given given) {
        given.only("role", "model", "power", "cylinder");
        return new BackUp(given.required("role", one(given, "role", KitRole.values(), KitRole::code)), lens(given));
    }

    private static CheckedLens lens(Given given) {
        return new CheckedLens(
                given.required(
                        "model",
                        given.one("model", Reference.class)
                                .map(Shelf::name)
                                .filter(name -> name.startsWith("DeviceDefinition/"))),
                given.required("power", given.one("power", Quantity.class).map(each -> dioptres(given, "power", each))),
                given.one("cylinder", Quantity.class).map(each -> dioptres(given, "cylinder", each)));
    }

    /** None was named and none is known: an empty set. Nobody asked: nothing. */
    private Optional<Set<String>> allergies() {
        Set<String> named = given.texts("allergy").collect(Collectors.toSet());
        boolean none = given.one("no-allergy", BooleanType.class)
                .map(BooleanType::booleanValue)
                .orElse(false);
        if (none && !named.isEmpty()) {
            throw given.refused("no-allergy", "contradicts the allergies that are named");
        }
        return none || !named.isEmpty() ? Optional.of(named) : Optional.empty();
    }

    private OffsetDateTime at() {
        return given.checked(
                "at",
                () -> OffsetDateTime.parse(given.required("at", given.one("at", DateTimeType.class))
                        .getValueAsString()));
    }

    private Degrees axis(Quantity quantity) {
        return given.checked("axis", () -> Degrees.of(value(given, "axis", quantity, "deg")));
    }

    private static Dioptres dioptres(Given given, String name, Quantity quantity) {
        return given.checked(name, () -> Dioptres.of(value(given, name, quantity, "[diop]")));
    }

    private static double value(Given given, String name, Quantity quantity, String unit) {
        if (!quantity.hasValue()
                || quantity.hasComparator()
                || !Systems.UCUM.equals(quantity.getSystem())
                || !unit.equals(quantity.getCode())) {
            throw given.refused(name, "is no value in the UCUM unit " + unit);
        }
        return quantity.getValue().doubleValue();
    }

    private static <T> Optional<T> one(Given given, String name, T[] values, Function<T, String> code) {
        return given.text(name).map(text -> Stream.of(values)
                .filter(each -> code.apply(each).equals(text))
                .findFirst()
                .orElseThrow(() -> given.refused(
                        name, "is none of " + Stream.of(values).map(code).collect(Collectors.joining(", ")))));
    }

    private static String text(@Nullable String text) {
        return text == null ? "" : text;
    }
}

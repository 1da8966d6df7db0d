package org.lensward.board.api;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Supplier;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.hl7.fhir.r4.model.OperationOutcome.IssueType;
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
import org.lensward.record.UnreadableRecord;

/** What people present at a checkpoint, as JSON: {@link Presented}'s fields. What is absent was not stated; what is unknown is refused. */
public final class PresentedJson {

    private final Told told;

    private PresentedJson(Told told) {
        this.told = told;
    }

    /**
     * The JSON, read.
     *
     * @throws UnreadableRecord where it has a field that is unknown or not what it must be
     */
    public static PresentedJson of(JsonNode tree) {
        return new PresentedJson(new Told(tree, "presented")
                .only(
                        "patient",
                        "eyes",
                        "plan",
                        "carton",
                        "axis",
                        "allergies",
                        "back-ups",
                        "people",
                        "at",
                        "override"));
    }

    /**
     * Likewise of a file.
     *
     * @throws UnreadableRecord where it is not there or not JSON, too
     */
    public static PresentedJson read(Path file) {
        try {
            return of(new ObjectMapper().readTree(Files.readString(file)));
        } catch (JsonProcessingException notJson) {
            throw new UnreadableRecord(IssueType.STRUCTURE, "presented", "Not JSON: " + notJson.getOriginalMessage());
        } catch (IOException unreadable) {
            throw new UnreadableRecord(
                    IssueType.NOTFOUND, "presented", "The file " + file + " cannot be read as text.");
        }
    }

    /** With the carton that was scanned, at the time that was told. */
    public Presented with(Scanned scanned) {
        return with(scanned, () -> told.required("at", OffsetDateTime::parse));
    }

    /** With the carton that was scanned, at a time that is known better than anybody tells it. */
    public Presented with(Scanned scanned, OffsetDateTime at) {
        return with(scanned, () -> at);
    }

    private Presented with(Scanned scanned, Supplier<OffsetDateTime> at) {
        Told carton = told.part("carton").only("read", "state");
        return new Presented(
                patient(told.part("patient").only("numbers", "birth-date")),
                eyes(told.part("eyes").only("booking", "sheet", "biometry", "mark")),
                told.text("plan"),
                scanned.presented(
                        carton.has("read")
                                ? Optional.of(box(carton.part("read").only("lens", "reader")))
                                : Optional.empty(),
                        carton.one("state", text -> one(text, PackageState.values()))),
                told.one("axis", Degrees::parse),
                told.has("allergies") ? Optional.of(Set.copyOf(told.texts("allergies"))) : Optional.empty(),
                told.parts("back-ups").map(PresentedJson::backUp).toList(),
                people(told.part("people").only("reader", "second")),
                at.get());
    }

    /** Whether a clinician goes on in spite of a difference. */
    public Exemption exemption() {
        if (!told.has("override")) {
            return Exemption.none();
        }
        Told signed = told.part("override").only("clinician", "reason", "second");
        return signed.checked(() -> new Exemption.Signed(
                signed.text("clinician").orElse(""),
                signed.text("reason").orElse(""),
                signed.text("second").orElse("")));
    }

    private static Identity patient(Told told) {
        Set<Identity.Number> numbers = told.parts("numbers")
                .map(each -> each.only("system", "value"))
                .map(each -> each.checked(() -> new Identity.Number(
                        each.text("system").orElse(""), each.text("value").orElse(""))))
                .collect(Collectors.toSet());
        return new Identity(numbers, told.one("birth-date", LocalDate::parse));
    }

    private static EyesRead eyes(Told told) {
        return new EyesRead(eye(told, "booking"), eye(told, "sheet"), eye(told, "biometry"), eye(told, "mark"));
    }

    private static Optional<Laterality> eye(Told told, String place) {
        return told.one(place, text -> one(text, Laterality.values()));
    }

    private static Carton.BoxRead box(Told told) {
        return new Carton.BoxRead(lens(told.part("lens")), told.text("reader").orElse(""));
    }

    private static CheckedLens lens(Told told) {
        told.only("model", "power", "cylinder");
        return new CheckedLens(
                told.required("model", text -> text),
                told.required("power", Dioptres::parse),
                told.one("cylinder", Dioptres::parse));
    }

    private static BackUp backUp(Told told) {
        told.only("role", "lens");
        KitRole role = told.required("role", text -> Stream.of(KitRole.values())
                .filter(each -> each.code().equals(text))
                .findFirst()
                .orElseThrow(() -> new IllegalArgumentException("not one of the roles of a kit")));
        return new BackUp(role, lens(told.part("lens")));
    }

    private static People people(Told told) {
        return new People(told.text("reader"), told.text("second"));
    }

    private static <T> T one(String text, T[] values) {
        return Stream.of(values)
                .filter(each -> each.toString().equals(text))
                .findFirst()
                .orElseThrow(() -> new IllegalArgumentException("not one of " + List.of(values)));
    }
}

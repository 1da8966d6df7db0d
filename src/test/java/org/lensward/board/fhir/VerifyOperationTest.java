package org.lensward.board.fhir;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.net.http.HttpRequest;
import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.function.Consumer;
import java.util.stream.Stream;
import org.hl7.fhir.r4.model.BooleanType;
import org.hl7.fhir.r4.model.Bundle;
import org.hl7.fhir.r4.model.CapabilityStatement;
import org.hl7.fhir.r4.model.CodeType;
import org.hl7.fhir.r4.model.Coding;
import org.hl7.fhir.r4.model.DateTimeType;
import org.hl7.fhir.r4.model.OperationDefinition;
import org.hl7.fhir.r4.model.Parameters;
import org.hl7.fhir.r4.model.Parameters.ParametersParameterComponent;
import org.hl7.fhir.r4.model.Reference;
import org.hl7.fhir.r4.model.StringType;
import org.hl7.fhir.r4.model.Task;
import org.junit.jupiter.api.Named;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import org.lensward.board.ServedDay;
import org.lensward.board.ServedDayExtension;
import org.lensward.record.ProfileValidator;
import org.lensward.record.Shelf;

/** {@code $verify-lens} over HTTP on Bundles, which writes nothing; in the record it is tried by an independent client, see FhirClientTest. */
@ExtendWith(ServedDayExtension.class)
class VerifyOperationTest {

    private final ServedDay day;
    private final PlanCalls calls;

    VerifyOperationTest(ServedDay day) {
        this.day = day;
        this.calls = new PlanCalls(day);
    }

    private HttpRequest.Builder verify(Parameters given) {
        return day.to("/fhir/$verify-lens")
                .header("Content-Type", "application/fhir+json")
                .POST(BodyPublishers.ofString(PlanCalls.text(given)));
    }

    /** The answer, in the shape that its OperationDefinition says. */
    private Parameters verified(Parameters given) {
        HttpResponse<String> answer = day.send(verify(given));
        assertThat(answer.statusCode()).as(answer.body()).isEqualTo(200);
        Parameters said = ServedDay.FHIR.newJsonParser().parseResource(Parameters.class, answer.body());
        assertThat(ProfileValidator.errors(said)).isEmpty();
        OperationShape.of("verify-lens").assertAnswer(said);
        assertThat(value(said, "written")).isEqualTo("false");
        return said;
    }

    private static String result(Parameters said) {
        return value(said, "result");
    }

    private static String value(Parameters said, String name) {
        return said.getParameter(name).getValue().primitiveValue();
    }

    private static List<String> codes(Parameters said) {
        return said.getParameter().stream()
                .filter(each -> each.getName().equals("difference"))
                .map(each -> ((Coding) part(each, "code")).getCode())
                .toList();
    }

    private static Object part(ParametersParameterComponent parameter, String name) {
        return parameter.getPart().stream()
                .filter(each -> each.getName().equals(name))
                .map(ParametersParameterComponent::getValue)
                .findFirst()
                .orElseThrow();
    }

    private static Parameters careful() throws IOException {
        return CarefulTeam.pick(CarefulTeam.confirmed(), CarefulTeam.RIGHT);
    }

    @Test
    void what_agrees_passes_and_the_transaction_is_handed_out() throws IOException {
        Parameters given = careful();
        OperationShape.of("verify-lens").assertRequest(given);
        Parameters said = verified(given);
        assertThat(codes(said)).isEmpty();
        assertThat(result(said)).isEqualTo("passed");
        assertThat(value(said, "state")).isEqualTo("picked");
        Bundle transaction = (Bundle) said.getParameter().stream()
                .filter(each -> each.getName().equals("transaction"))
                .findFirst()
                .orElseThrow()
                .getResource();
        assertThat(new Shelf(transaction).all(Task.class)).hasSize(1);
        assertThat(transaction.getEntry()).allSatisfy(entry -> assertThat(ProfileValidator.errors(entry.getResource()))
                .isEmpty());
    }

    @Test
    void the_booking_may_be_named_where_the_bundle_has_it() throws IOException {
        Parameters given = careful();
        CarefulTeam.add(given, "booking", new Reference("ServiceRequest/booking-01"));
        assertThat(result(verified(given))).isEqualTo("passed");
        CarefulTeam.replace(given, "booking", new Reference("ServiceRequest/booking-02"));
        calls.refused(verify(given), 422);
    }

    @Test
    void another_carton_stops_it_and_each_difference_has_its_remedy() throws IOException {
        Parameters said = verified(CarefulTeam.pick(CarefulTeam.confirmed(), CarefulTeam.STRONGER));
        assertThat(result(said)).isEqualTo("stopped");
        assertThat(value(said, "state")).isEqualTo("failed");
        assertThat(codes(said)).containsExactly("check-power-differs");
        assertThat(said.getParameter().stream()
                        .filter(each -> each.getName().equals("difference"))
                        .map(each -> part(each, "remedy").toString()))
                .doesNotContain("");
    }

    /** The left eye where the right is planned; SNOMED CT 1290031003 is our code for the left. */
    @Test
    void another_eye_in_any_place_stops_it() throws IOException {
        for (String place : List.of("booking", "sheet", "biometry")) {
            Parameters given = careful();
            given.getParameter()
                    .removeIf(each -> each.getName().equals("eye")
                            && part(each, "source").toString().contains(place));
            CarefulTeam.eye(given, place, "1290031003");
            Parameters said = verified(given);
            assertThat(result(said)).as(place).isEqualTo("stopped");
            assertThat(codes(said)).as(place).containsExactly("check-eye-differs");
        }
    }

    @Test
    void what_was_not_presented_differs() throws IOException {
        Parameters given = careful();
        CarefulTeam.replace(given, "no-allergy");
        assertThat(codes(verified(given))).containsExactly("check-allergies-differ");
        CarefulTeam.replace(given, "no-allergy", new BooleanType(false));
        assertThat(codes(verified(given))).containsExactly("check-allergies-differ");
    }

    @Test
    void an_unconfirmed_plan_or_an_unreadable_scan_is_refused_with_nothing_to_write() throws IOException {
        Parameters early = verified(CarefulTeam.pick(CarefulTeam.planned(), CarefulTeam.RIGHT));
        assertThat(result(early)).isEqualTo("refused");
        assertThat(codes(early)).containsExactly("check-not-confirmed");
        Parameters unread = verified(CarefulTeam.pick(CarefulTeam.confirmed(), "nothing like a label"));
        assertThat(result(unread)).isEqualTo("refused");
        assertThat(codes(unread)).containsExactly("label-not-recognised");
        assertThat(Stream.of(early, unread).flatMap(each -> each.getParameter().stream()))
                .noneMatch(each -> each.getName().equals("transaction"));
    }

    static List<Named<Consumer<Parameters>>> wrong() {
        return List.of(
                wrong("a parameter that is not known", each -> CarefulTeam.add(each, "carton", new StringType("x"))),
                wrong("no checkpoint", each -> CarefulTeam.replace(each, "checkpoint")),
                wrong("no such checkpoint", each -> CarefulTeam.replace(each, "checkpoint", new CodeType("later"))),
                wrong(
                        "two checkpoints",
                        each -> CarefulTeam.replace(each, "checkpoint", new CodeType("pick"), new CodeType("sign-in"))),
                wrong("no time", each -> CarefulTeam.replace(each, "at")),
                wrong(
                        "a time without its zone",
                        each -> CarefulTeam.replace(each, "at", new DateTimeType("2026-12-10"))),
                wrong("an eye of no place", each -> CarefulTeam.eye(each, "memory", "1290032005")),
                wrong("the eye of one place twice", each -> CarefulTeam.eye(each, "mark", "1290031003")),
                wrong("both eyes", each -> CarefulTeam.eye(each, "mark", "362508001")),
                wrong("a power in millimetres", each -> each.addParameter()
                        .setName("box")
                        .addPart()
                        .setName("power")
                        .setValue(CarefulTeam.dioptres("22").setCode("mm"))),
                wrong("an allergy and none", each -> CarefulTeam.add(each, "allergy", new StringType("Penicillin"))),
                wrong("half an override", each -> each.addParameter()
                        .setName("override")
                        .addPart()
                        .setName("reason")
                        .setValue(new StringType("in a hurry"))),
                wrong("an axis in dioptres", each -> CarefulTeam.add(each, "axis", CarefulTeam.dioptres("90"))),
                wrong("a package in no such state", each -> CarefulTeam.replace(each, "package", new CodeType("wet"))));
    }

    private static Named<Consumer<Parameters>> wrong(String what, Consumer<Parameters> spoil) {
        return Named.of(what, spoil);
    }

    @ParameterizedTest
    @MethodSource("wrong")
    void parameters_that_are_not_those_are_a_bad_request(Consumer<Parameters> spoil) throws IOException {
        Parameters given = careful();
        spoil.accept(given);
        calls.refused(verify(given), 400);
    }

    @Test
    void neither_bundle_nor_booking_is_a_bad_request_and_a_booking_that_is_not_there_is_not_found() throws IOException {
        Parameters given = careful();
        given.getParameter().removeIf(each -> each.getName().equals("bundle"));
        calls.refused(verify(given), 400);
        CarefulTeam.add(given, "booking", new Reference("ServiceRequest/no-such-booking"));
        calls.refused(verify(given), 404);
    }

    @Test
    void a_carton_that_is_not_in_the_bank_is_refused_before_the_record_is_touched() throws IOException {
        String booking =
                "ServiceRequest/" + day.any("ready").booking().getIdElement().getIdPart();
        Parameters given = CarefulTeam.pick(CarefulTeam.confirmed(), "(01)09521234000013(17)280131(10)NOBODY(21)1");
        given.getParameter().removeIf(each -> each.getName().equals("bundle"));
        CarefulTeam.add(given, "booking", new Reference(booking));
        Parameters said = verified(given);
        assertThat(result(said)).isEqualTo("refused");
        assertThat(codes(said)).containsExactly("unit-not-in-bank");
    }

    @Test
    void sign_out_in_the_record_names_surgeon_and_hospital() throws IOException {
        Parameters given = careful();
        given.getParameter().removeIf(each -> each.getName().equals("bundle"));
        CarefulTeam.replace(given, "checkpoint", new CodeType("sign-out"));
        CarefulTeam.add(given, "booking", new Reference("ServiceRequest/booking-01"));
        calls.refused(verify(given), 400);
    }

    @ParameterizedTest
    @CsvSource({
        "plan, plan-asked, true",
        "verify-lens, verify-lens-asked, true",
        "verify-lens, verify-lens-passed, false",
        "verify-lens, verify-lens-stopped, false",
        "verify-lens, verify-lens-refused, false"
    })
    void an_example_of_the_package_is_valid_and_in_the_shape_that_is_published(
            String operation, String example, boolean asked) throws IOException {
        Parameters parameters = ServedDay.FHIR
                .newJsonParser()
                .parseResource(
                        Parameters.class,
                        Files.readString(Path.of("fhir-profiles/examples/operations", example + ".json")));
        assertThat(ProfileValidator.errors(parameters)).isEmpty();
        if (asked) {
            OperationShape.of(operation).assertRequest(parameters);
        } else {
            OperationShape.of(operation).assertAnswer(parameters);
        }
    }

    @Test
    void the_metadata_are_what_the_package_says_is_served() {
        HttpResponse<String> answer = day.send(day.to("/fhir/metadata").GET());
        assertThat(answer.statusCode()).isEqualTo(200);
        CapabilityStatement said =
                ServedDay.FHIR.newJsonParser().parseResource(CapabilityStatement.class, answer.body());
        assertThat(ProfileValidator.errors(said)).isEmpty();
        assertThat(said.getRestFirstRep().getOperation())
                .extracting(each -> each.getName() + " " + each.getDefinition())
                .containsExactlyInAnyOrderElementsOf(Stream.of("plan", "verify-lens")
                        .map(name -> OperationShape.of(name).definition())
                        .map((OperationDefinition each) -> each.getCode() + " " + each.getUrl())
                        .toList());
        calls.refused(
                day.to("/fhir/metadata")
                        .header("Content-Type", "application/fhir+json")
                        .POST(BodyPublishers.ofString("{}")),
                405);
    }
}

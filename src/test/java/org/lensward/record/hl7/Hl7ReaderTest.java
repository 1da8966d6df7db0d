package org.lensward.record.hl7;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.time.ZoneId;
import java.util.List;
import java.util.Map;
import org.hl7.fhir.r4.model.Appointment;
import org.hl7.fhir.r4.model.Observation;
import org.hl7.fhir.r4.model.Quantity.QuantityComparator;
import org.hl7.fhir.r4.model.Resource;
import org.hl7.fhir.r4.model.ServiceRequest;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.lensward.finding.FindingCode;
import org.lensward.record.incoming.Incoming;
import org.lensward.record.incoming.RefusedInput;
import org.lensward.record.incoming.Site;

/** Field numbers: HL7 2.5 chapters 2, 3, 4, 7 and 10; OBX-20 is the observation site of 2.6 (fhir.md, Hazards). */
class Hl7ReaderTest {

    private static final Site SITE = new Site(
            Map.of("HOSP", "https://hospital.example/mrn", "2.999.1", "https://nation.example/number"),
            Map.of("CATIOL", "415089008"),
            ZoneId.of("Europe/London"));
    private static final Hl7Reader READER = new Hl7Reader(SITE, StandardCharsets.UTF_8, "P");
    private static final String PID = "PID|1||QX1^^^HOSP^MR~INV-2^^^&2.999.1&ISO^NI||Tillwick^Ada||19521104";

    private static String header(String type) {
        return "MSH|^~\\&|BIOMETER|EYES|LENSWARD|EYES|20261125093000||" + type + "|C1|P|2.5";
    }

    private static Incoming read(String... segments) {
        return READER.read((String.join("\r", segments) + "\r").getBytes(StandardCharsets.UTF_8));
    }

    private static FindingCode refusal(String... segments) {
        return catchThrowableOfType(RefusedInput.class, () -> read(segments)).code();
    }

    private static String[] biometry(String... results) {
        String[] message = new String[results.length + 3];
        message[0] = header("ORU^R01^ORU_R01");
        message[1] = PID;
        message[2] = "OBR|1||F1^BIOMETER|BIO|||20261125092500";
        System.arraycopy(results, 0, message, 3, results.length);
        return message;
    }

    private static Observation only(String... segments) {
        assertThat(read(segments).resources()).hasSize(1);
        return (Observation) read(segments).resources().get(0);
    }

    private static String length(String value) {
        return "OBX|1|NM|axial-length^^99LENSWARD||" + value + "|mm^^UCUM|||||F||||||optical^^99LENSWARD|||OD";
    }

    @Nested
    class the_side {

        /** Columns: OBX-3, OBX-20, OBR-45, OBR-46, OBR-47, then the eye or the reason of refusal. */
        @ParameterizedTest
        @CsvSource({
            "axial-length^^99LENSWARD, OD, '', '', '', right eye",
            "axial-length^^99LENSWARD, OS, '', '', '', left eye",
            "axial-length^^99LENSWARD, 1290032005^^SCT, '', '', '', right eye",
            "axial-length^^99LENSWARD, 8966001^^SCT, '', '', '', left eye",
            "64742-0^^LN, '', '', '', '', right eye",
            "66067-0^^LN, '', '', '', '', left eye",
            "66067-0^^LN, OS, '', '', '', left eye",
            "axial-length^^99LENSWARD, '', RT, '', '', right eye",
            "axial-length^^99LENSWARD, '', '', OS, '', left eye",
            "axial-length^^99LENSWARD, '', '', '', LT, left eye",
            "axial-length^^99LENSWARD, OD, 50, '', '', right eye",
            "64742-0^^LN, '', '', OU, '', right eye",
            "axial-length^^99LENSWARD, OD, '', STAT, '', right eye",
            "axial-length^^99LENSWARD, OD, LT, '', '', MESSAGE_EYES_CONFLICT",
            "64742-0^^LN, OS, '', '', '', MESSAGE_EYES_CONFLICT",
            "66067-0^^LN, '', '', RT, '', MESSAGE_EYES_CONFLICT",
            "axial-length^^99LENSWARD, '', RT, LT, '', MESSAGE_EYES_CONFLICT",
            "axial-length^^99LENSWARD, OU, '', '', '', MESSAGE_EYES_CONFLICT",
            "axial-length^^99LENSWARD, OD~OS, '', '', '', MESSAGE_EYES_CONFLICT",
            "axial-length^^99LENSWARD, OU, RT, '', '', MESSAGE_EYES_CONFLICT",
            "axial-length^^99LENSWARD, '', 50, '', '', MESSAGE_EYES_CONFLICT",
            "axial-length^^99LENSWARD, '', '', '', '', MESSAGE_WITHOUT_EYE",
            "axial-length^^99LENSWARD, RE, '', '', '', MESSAGE_EYE_UNREADABLE",
            "axial-length^^99LENSWARD, LE, RT, '', '', MESSAGE_EYE_UNREADABLE"
        })
        void is_taken_from_the_nearest_place_and_never_against_another(
                String code, String obx20, String obr45, String obr46, String obr47, String expected) {
            String order = "OBR|1||F1|BIO|||20261125092500" + "|".repeat(38) + obr45 + "|" + obr46 + "|" + obr47;
            String result = "OBX|1|NM|" + code + "||23.5|mm|||||F|||||||||" + obx20;
            String[] message = {header("ORU^R01"), PID, order, result};
            if (expected.endsWith("eye")) {
                assertThat(only(message).getBodySite().getText()).isEqualTo(expected);
            } else {
                assertThat(refusal(message)).isEqualTo(FindingCode.valueOf(expected));
            }
        }

        @Test
        void is_not_asked_of_what_is_of_no_eye() {
            assertThat(only(biometry("OBX|1|NM|6301-6^INR^LN||2.1|{INR}^^UCUM|||||F"))
                            .hasBodySite())
                    .isFalse();
        }

        /** Columns: PR1-16, AIS-12, AIS-11, then the eye or the reason of refusal. */
        @ParameterizedTest
        @CsvSource({
            "RT, '', '', right eye",
            "'', OS, '', left eye",
            "'', '', 8966001^^SCT, left eye",
            "LT, LT, OS, left eye",
            "RT, '', 50, right eye",
            "RT, LT, '', MESSAGE_EYES_CONFLICT",
            "'', OD, OS, MESSAGE_EYES_CONFLICT",
            "50, '', '', MESSAGE_EYES_CONFLICT",
            "'', '', OU, MESSAGE_EYES_CONFLICT",
            "'', '', '', MESSAGE_WITHOUT_EYE"
        })
        void of_a_booking_is_that_of_its_procedure_then_of_its_service(
                String pr1, String filler, String placer, String expected) {
            String[] message = {
                header("SIU^S12"),
                "SCH|P1|F1",
                PID,
                "AIS|1||415089008^^SCT|20261203083000|||40|min|||" + placer + "|" + filler,
                "PR1|1||415089008^^SCT" + "|".repeat(13) + pr1
            };
            if (expected.endsWith("eye")) {
                ServiceRequest booking =
                        (ServiceRequest) read(message).resources().get(0);
                assertThat(booking.getBodySiteFirstRep().getText()).isEqualTo(expected);
            } else {
                assertThat(refusal(message)).isEqualTo(FindingCode.valueOf(expected));
            }
        }
    }

    @Nested
    class a_result {

        /** HL7 table 0085 against FHIR R4's observation-status: HL7's own v2-to-FHIR map, value from memory. */
        @ParameterizedTest
        @CsvSource({
            "F, final",
            "C, corrected",
            "A, amended",
            "P, preliminary",
            "R, preliminary",
            "S, preliminary",
            "U, final",
            "I, registered",
            "D, entered-in-error",
            "W, entered-in-error",
            "X, cancelled"
        })
        void keeps_its_state(String sent, String status) {
            assertThat(only(biometry(length("23.5").replace("|||||F|", "|||||" + sent + "|")))
                            .getStatus()
                            .toCode())
                    .isEqualTo(status);
        }

        @Test
        void that_is_withdrawn_needs_no_value() {
            assertThat(only(biometry(length("").replace("|||||F|", "|||||X|"))).hasValue())
                    .isFalse();
            assertThat(refusal(biometry(length("")))).isEqualTo(FindingCode.MESSAGE_FIELD_MISSING);
        }

        @Test
        void keeps_number_unit_method_and_times() {
            Observation length = only(biometry(length("23.470")));
            assertThat(length.getValueQuantity().getValue().toPlainString()).isEqualTo("23.470");
            assertThat(length.getValueQuantity().getCode()).isEqualTo("mm");
            assertThat(length.getMethod().getCodingFirstRep().getSystem())
                    .isEqualTo("https://lensward.org/fhir/CodeSystem/biometry-method");
            // No zone was sent: the site's, which in November is UTC.
            assertThat(length.getEffectiveDateTimeType().getValue()).isEqualTo("2026-11-25T09:25:00Z");
            assertThat(length.getIssued()).isEqualTo("2026-11-25T09:30:00Z");
        }

        @ParameterizedTest
        @ValueSource(strings = {"23,47", "abc", "23.4~23.5", "1e3", "NaN", "2 3"})
        void that_is_no_number_is_refused(String value) {
            assertThat(refusal(biometry(length(value)))).isEqualTo(FindingCode.MESSAGE_UNREADABLE);
        }

        @Test
        void below_a_number_keeps_the_comparator() {
            Observation low = only(biometry("OBX|1|SN|axial-length^^99LENSWARD||<^22|mm|||||F|||||||||OD"));
            assertThat(low.getValueQuantity().getComparator()).isEqualTo(QuantityComparator.LESS_THAN);
            assertThat(refusal(biometry("OBX|1|SN|axial-length^^99LENSWARD||^22^-^23|mm|||||F|||||||||OD")))
                    .isEqualTo(FindingCode.MESSAGE_UNREADABLE);
        }

        @Test
        void shares_an_observation_with_those_of_its_sub_id() {
            Observation cornea = only(biometry(
                    "OBX|1|NM|keratometry-flat-radius^^99LENSWARD|K1|7.9|mm|||||F|||||||||OD",
                    "OBX|2|NM|keratometry-steep-radius^^99LENSWARD|K1|7.7|mm|||||F|||||||||OD"));
            assertThat(cornea.getComponent()).hasSize(1);
            assertThat(refusal(biometry(
                            "OBX|1|NM|keratometry-flat-radius^^99LENSWARD|K1|7.9|mm|||||F|||||||||OD",
                            "OBX|2|NM|keratometry-steep-radius^^99LENSWARD|K1|7.7|mm|||||F|||||||||OS")))
                    .isEqualTo(FindingCode.MESSAGE_EYES_CONFLICT);
            assertThat(refusal(biometry(
                            "OBX|1|NM|keratometry-flat-radius^^99LENSWARD|K1|7.9|mm|||||F|||||||||OD",
                            "OBX|2|NM|keratometry-steep-radius^^99LENSWARD|K1|7.7|mm|||||P|||||||||OD")))
                    .isEqualTo(FindingCode.MESSAGE_UNREADABLE);
        }

        @Test
        void has_the_id_of_its_order_and_set_id() {
            String id = only(biometry(length("23.5"))).getId();
            assertThat(only(biometry(length("23.6"))).getId()).isEqualTo(id);
            assertThat(only(biometry(length("23.5").replace("OBX|1", "OBX|2"))).getId())
                    .isNotEqualTo(id);
            assertThat(refusal(biometry(length("23.5"), length("23.6")))).isEqualTo(FindingCode.MESSAGE_UNREADABLE);
            assertThat(refusal(header("ORU^R01"), PID, "OBR|1||", length("23.5")))
                    .isEqualTo(FindingCode.MESSAGE_FIELD_MISSING);
        }

        @Test
        void with_markup_in_it_stays_text() {
            Observation hostile = only(biometry("OBX|1|ST|X9^<script>alert(1)</script>^L||<b onload=x>\\T\\||||||F"));
            assertThat(hostile.getCode().getText()).isEqualTo("<script>alert(1)</script>");
            assertThat(hostile.getValueStringType().getValue()).isEqualTo("<b onload=x>&");
        }
    }

    @Nested
    class a_booking {

        private static final String AIS = "AIS|1||CATIOL^Cataract^L|20261203083000|||40|min||||OD";

        @Test
        void is_a_request_and_the_appointment_based_on_it() {
            List<Resource> made = read(header("SIU^S12"), "SCH|P1|F1", PID, AIS).resources();
            ServiceRequest booking = (ServiceRequest) made.get(0);
            Appointment appointment = (Appointment) made.get(1);
            assertThat(booking.getCode().getCodingFirstRep().getCode()).isEqualTo("415089008");
            assertThat(booking.getStatus().toCode()).isEqualTo("active");
            assertThat(booking.getOccurrenceDateTimeType().getValue()).isEqualTo("2026-12-03T08:30:00Z");
            assertThat(appointment.getBasedOnFirstRep().getReference()).isEqualTo("ServiceRequest/" + booking.getId());
            assertThat(appointment.getEnd()).isEqualTo("2026-12-03T09:10:00Z");
        }

        @ParameterizedTest
        @ValueSource(strings = {"S12", "S13", "S14"})
        void keeps_its_id_through_every_event(String event) {
            ServiceRequest made = (ServiceRequest) read(header("SIU^" + event), "SCH|P1|F1", PID, AIS)
                    .resources()
                    .get(0);
            ServiceRequest off = (ServiceRequest)
                    read(header("SIU^S15"), "SCH|P9|F1", PID, AIS).resources().get(0);
            assertThat(off.getId()).isEqualTo(made.getId());
            assertThat(off.getStatus().toCode()).isEqualTo("revoked");
        }

        @Test
        void of_another_operation_only_withdraws_what_was_ours() {
            Incoming other = read(header("SIU^S14"), "SCH|P1|F1", PID, AIS.replace("CATIOL", "TONSIL"));
            assertThat(other.onlyKnown()).isTrue();
            assertThat(((ServiceRequest) other.resources().get(0)).getStatus().toCode())
                    .isEqualTo("revoked");
        }

        @Test
        void without_a_day_or_a_number_is_refused() {
            assertThat(refusal(header("SIU^S12"), "SCH|P1|F1", PID, AIS.replace("20261203083000", "")))
                    .isEqualTo(FindingCode.MESSAGE_FIELD_MISSING);
            assertThat(refusal(header("SIU^S12"), "SCH||", PID, AIS)).isEqualTo(FindingCode.MESSAGE_FIELD_MISSING);
        }
    }

    @Nested
    class the_message {

        @Test
        void names_the_patient_by_every_authority_known() {
            Incoming incoming = read(biometry(length("23.5")));
            assertThat(incoming.whom().identifiers())
                    .extracting(each -> each.getSystem() + " " + each.getValue())
                    .containsExactly("https://hospital.example/mrn QX1", "https://nation.example/number INV-2");
            assertThat(incoming.toString()).doesNotContain("QX1");
            assertThat(refusal(header("ORU^R01"), "PID|1||QX1^^^ELSEWHERE", "OBR|1||F1", length("23.5")))
                    .isEqualTo(FindingCode.PATIENT_SYSTEM_UNKNOWN);
        }

        @ParameterizedTest
        @CsvSource({
            "|P|2.5, |P|2.2",
            "|P|2.5, |P|9.9",
            "|P|2.5, |T|2.5",
            "ORU^R01, ADT^A01",
            "ORU^R01, SIU^S26",
            "ORU^R01, ORU^R30"
        })
        void that_is_not_for_us_is_not_accepted(String was, String is) {
            assertThat(refusal(header("ORU^R01").replace(was, is), PID)).isEqualTo(FindingCode.MESSAGE_NOT_ACCEPTED);
        }

        @ParameterizedTest
        @ValueSource(strings = {"", "x", "MSH", "MSH|", "MSH|^~\\", "PID|1", "{}", "MSH|^~\\&\rgarbage"})
        void that_is_none_is_unreadable(String text) {
            assertThatThrownBy(() -> READER.read(text.getBytes(StandardCharsets.UTF_8)))
                    .isInstanceOf(RefusedInput.class);
        }

        @ParameterizedTest
        @CsvSource({"8859/1, ISO-8859-1", "UNICODE UTF-8, UTF-8", "8859/15, ISO-8859-15"})
        void is_read_in_the_character_set_it_names(String name, String java) {
            String text = String.join(
                    "\r", header("ORU^R01") + "||||||" + name, PID, "OBR|1||F1", "OBX|1|ST|X^Größe^L||é||||||F");
            Incoming incoming = READER.read(text.getBytes(Charset.forName(java)));
            assertThat(((Observation) incoming.resources().get(0)).getCode().getText())
                    .isEqualTo("Größe");
        }

        @Test
        void in_another_character_set_than_it_says_is_refused() {
            String text = String.join("\r", header("ORU^R01"), PID, "OBR|1||F1", "OBX|1|ST|X^Größe^L||é||||||F");
            assertThatThrownBy(() -> READER.read(text.getBytes(StandardCharsets.ISO_8859_1)))
                    .isInstanceOf(RefusedInput.class);
        }

        /** HL7 2.5 section 2.A.22 and its ranges. */
        @ParameterizedTest
        @ValueSource(strings = {"20261325093000", "20260230093000", "25.11.2026", "20261125"})
        void with_an_impossible_time_is_refused(String time) {
            assertThat(refusal(header("ORU^R01").replace("20261125093000", time), PID, "OBR|1||F1", length("23.5")))
                    .isEqualTo(FindingCode.MESSAGE_UNREADABLE);
        }
    }
}

package org.lensward.flow;

import static org.assertj.core.api.Assertions.assertThat;

import jakarta.jms.BytesMessage;
import jakarta.jms.JMSContext;
import jakarta.jms.QueueBrowser;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.net.SocketException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.concurrent.Callable;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import org.hl7.fhir.r4.model.Appointment;
import org.hl7.fhir.r4.model.Observation;
import org.hl7.fhir.r4.model.Observation.ObservationStatus;
import org.hl7.fhir.r4.model.Reference;
import org.hl7.fhir.r4.model.ServiceRequest;
import org.hl7.fhir.r4.model.ServiceRequest.ServiceRequestStatus;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/**
 * Messages over a real socket through the real routes into a real record. Acknowledgement codes: HL7 2.5 section 2.9.2 and table 0008;
 * error conditions: table 0357.
 */
class MllpTest {

    private static final int SENDERS = 4;
    private static final int EACH = 250;

    private static Ward ward;
    private static Adapter adapter;

    @BeforeAll
    static void open() throws IOException {
        ward = new Ward();
        adapter = ward.adapter();
    }

    @AfterAll
    static void close() {
        adapter.close();
        ward.close();
    }

    private static String ask(byte[] message) throws IOException {
        try (MllpClient sender = new MllpClient(ward.port())) {
            return sender.ask(message);
        }
    }

    private static String code(String answer) {
        return answer.split("\r")[1].split("\\|")[1];
    }

    private static String control(String answer) {
        return answer.split("\r")[1].split("\\|")[2];
    }

    private static List<Observation> lengths(String millimetres) {
        return ward.all(Observation.class).stream()
                .filter(each ->
                        each.getValueQuantity().getValue().toPlainString().equals(millimetres))
                .toList();
    }

    @Test
    void a_length_is_in_the_record_when_its_answer_is_AA() throws IOException {
        String answer = ask(Messages.length("C1", "F-1", "QX1077", "23.11"));
        assertThat(code(answer)).isEqualTo("AA");
        assertThat(control(answer)).isEqualTo("C1");
        assertThat(lengths("23.11")).singleElement().satisfies(length -> {
            assertThat(length.getStatus()).isEqualTo(ObservationStatus.FINAL);
            assertThat(length.getSubject().getReference()).isEqualTo("Patient/patient-01");
            assertThat(length.getBodySite().getText()).isEqualTo("right eye");
        });
    }

    @Test
    void the_same_message_again_changes_nothing() throws IOException {
        byte[] message = Messages.length("C2", "F-2", "QX1077", "23.12");
        ask(message);
        assertThat(code(ask(message))).isEqualTo("AA");
        assertThat(lengths("23.12"))
                .singleElement()
                .extracting(each -> each.getMeta().getVersionId())
                .isEqualTo("1");
    }

    @Test
    void an_unknown_patient_is_AE_and_nobody_is_made_up() throws IOException {
        String answer = ask(Messages.length("C3", "F-3", "NOBODY", "23.13"));
        assertThat(code(answer)).isEqualTo("AE");
        assertThat(answer).contains("ERR||PID^1^3|204|E").doesNotContain("NOBODY");
        assertThat(lengths("23.13")).isEmpty();
    }

    @Test
    void what_is_set_aside_waits_once_with_its_reason_however_often_it_is_sent() throws Exception {
        byte[] message = Messages.bytes(
                "MSH|^~\\&|BIOMETER|EYES|LENSWARD|EYES|20261125093000+0000||ORU^R01|C9|P|2.5",
                "PID|1||QX1077^^^HOSP^MR",
                "OBR|1||F-9^BIOMETER|BIO|||20261125092500+0000|||||||||||||||||||||||||||||||||||||||LT",
                "OBX|1|NM|64742-0^Axial length^LN||23.19|mm|||||F|||20261125092500+0000");
        for (int time = 0; time < 3; time++) {
            assertThat(code(ask(message))).isEqualTo("AE");
        }
        List<String> reasons = new ArrayList<>();
        try (JMSContext broker = adapter.broker().createContext();
                QueueBrowser quarantine = broker.createBrowser(broker.createQueue("lensward.quarantine"))) {
            for (Object each : Collections.list(quarantine.getEnumeration())) {
                if (Arrays.equals(((BytesMessage) each).getBody(byte[].class), message)) {
                    reasons.add(((BytesMessage) each).getStringProperty("reason"));
                }
            }
        }
        assertThat(reasons)
                .singleElement()
                .asString()
                .contains("message-eyes-conflict", "right and left", "Ask the sender");
        assertThat(lengths("23.19")).isEmpty();
    }

    @Test
    void another_type_of_message_is_AR() throws IOException {
        String answer = ask(Messages.bytes("MSH|^~\\&|A|B|C|D|20261125093000||ADT^A01|C4|P|2.5", "PID|1||X"));
        assertThat(code(answer)).isEqualTo("AR");
        assertThat(answer).contains("|200|E");
    }

    @Test
    void bytes_that_are_no_message_are_AR_and_the_connection_goes_on() throws IOException {
        try (MllpClient sender = new MllpClient(ward.port())) {
            assertThat(code(sender.ask("GET / HTTP/1.1".getBytes(StandardCharsets.UTF_8))))
                    .isEqualTo("AR");
            assertThat(code(sender.ask(Messages.length("C5", "F-5", "QX1077", "23.15"))))
                    .isEqualTo("AA");
        }
    }

    @Test
    void a_moved_booking_keeps_what_only_the_record_knows() throws IOException {
        assertThat(code(ask(Messages.booking("S12", "B5", "20261125080000+0000", "A-5"))))
                .isEqualTo("AA");
        ServiceRequest booking = booking("A-5");
        booking.addSupportingInfo(new Reference().setDisplay("the lens agreed"));
        ward.client().update().resource(booking).execute();
        assertThat(code(ask(Messages.booking("S13", "B6", "20261125090000+0000", "A-5"))))
                .isEqualTo("AA");
        assertThat(booking("A-5").getSupportingInfoFirstRep().getDisplay()).isEqualTo("the lens agreed");
        assertThat(booking("A-5").getStatus()).isEqualTo(ServiceRequestStatus.ACTIVE);
    }

    private static ServiceRequest booking(String number) {
        return ward.all(ServiceRequest.class).stream()
                .filter(each -> each.getIdentifier().stream()
                        .anyMatch(own -> own.getValue().equals(number)))
                .findFirst()
                .orElseThrow();
    }

    @Test
    void a_booking_is_made_moved_and_called_off_and_a_late_message_does_not_bring_it_back() throws IOException {
        assertThat(code(ask(Messages.booking("S12", "B1", "20261125080000+0000", "A-1"))))
                .isEqualTo("AA");
        assertThat(code(ask(Messages.booking("S15", "B3", "20261125100000+0000", "A-1"))))
                .isEqualTo("AA");
        assertThat(code(ask(Messages.booking("S13", "B2", "20261125090000+0000", "A-1"))))
                .isEqualTo("AA");
        assertThat(booking("A-1").getStatus()).isEqualTo(ServiceRequestStatus.REVOKED);
        assertThat(ward.all(Appointment.class).stream().filter(each -> each.getBasedOnFirstRep()
                        .getReference()
                        .endsWith(booking("A-1").getIdElement().getIdPart())))
                .singleElement()
                .extracting(each -> each.getStatus().toCode())
                .isEqualTo("cancelled");
    }

    /**
     * A thousand messages over four connections at once, ten of them in one write, every fifth connection cut in
     * mid-stream; what got no answer is sent again, as HL7 asks of a sender.
     */
    @Test
    void none_of_a_thousand_pipelined_messages_is_lost_or_doubled() throws Exception {
        Map<String, String> answers = new ConcurrentHashMap<>();
        ExecutorService senders = Executors.newFixedThreadPool(SENDERS);
        List<Callable<Void>> work = new ArrayList<>();
        for (int sender = 0; sender < SENDERS; sender++) {
            int own = sender;
            work.add(() -> send(own, answers));
        }
        for (Future<Void> each : senders.invokeAll(work)) {
            each.get();
        }
        senders.shutdown();
        assertThat(answers).hasSize(SENDERS * EACH);
        assertThat(answers.values()).containsOnly("AA");
        List<Observation> stored = ward.all(Observation.class).stream()
                .filter(each -> each.getSubject().getReference().equals("Patient/patient-02"))
                .toList();
        assertThat(stored).hasSize(SENDERS * EACH);
        assertThat(stored.stream()
                        .map(each -> each.getValueQuantity().getValue().toPlainString()))
                .doesNotHaveDuplicates();
        assertThat(stored).allMatch(each -> each.getMeta().getVersionId().equals("1"));
    }

    private static Void send(int sender, Map<String, String> answers) throws IOException {
        List<Integer> left = new ArrayList<>();
        for (int each = 0; each < EACH; each++) {
            left.add(each);
        }
        for (int round = 0; !left.isEmpty(); round++) {
            boolean cutting = round % 5 == 0;
            List<Integer> some = List.copyOf(left.subList(0, Math.min(10, left.size())));
            ByteArrayOutputStream together = new ByteArrayOutputStream();
            some.forEach(each -> together.writeBytes(MllpClient.framed(numbered(sender, each))));
            MllpClient connection = new MllpClient(ward.port());
            try (connection) {
                connection.write(together.toByteArray());
                int wanted = cutting ? some.size() / 2 : some.size();
                for (int index = 0; index < wanted; index++) {
                    String answer = connection.read();
                    answers.put(control(answer), code(answer));
                    left.remove(Integer.valueOf(Integer.parseInt(control(answer).substring(4))));
                }
                if (cutting) {
                    connection.cut();
                }
            } catch (SocketException cut) {
                continue; // what was not answered is still in the list
            }
        }
        return null;
    }

    private static byte[] numbered(int sender, int message) {
        String control = "N" + sender + "--" + message;
        return Messages.length(control, control, "QX1090", "2" + sender + "." + (1000 + message));
    }
}

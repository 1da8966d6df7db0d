package org.lensward.flow;

import static org.assertj.core.api.Assertions.assertThat;

import ca.uhn.hl7v2.DefaultHapiContext;
import ca.uhn.hl7v2.app.HL7Service;
import ca.uhn.hl7v2.model.Message;
import ca.uhn.hl7v2.protocol.ReceivingApplication;
import ca.uhn.hl7v2.util.Terser;
import java.math.BigDecimal;
import java.net.ServerSocket;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.Map;
import java.util.concurrent.CopyOnWriteArrayList;
import org.hl7.fhir.r4.model.CodeableConcept;
import org.hl7.fhir.r4.model.Coding;
import org.hl7.fhir.r4.model.DeviceRequest;
import org.hl7.fhir.r4.model.DeviceRequest.DeviceRequestStatus;
import org.hl7.fhir.r4.model.DeviceRequest.RequestIntent;
import org.hl7.fhir.r4.model.Quantity;
import org.hl7.fhir.r4.model.Reference;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Orders to a real receiver, HAPI's own HL7 server (a general library), over a socket. Order control codes: HL7 table 0119. */
class LensOrdersTest {

    private static final Duration SOON = Duration.ofSeconds(30);

    private final List<String> received = new CopyOnWriteArrayList<>();

    @Test
    void each_state_of_a_lens_request_is_ordered_once(@TempDir Path folder) throws Exception {
        int port;
        try (ServerSocket free = new ServerSocket(0)) {
            port = free.getLocalPort();
        }
        HL7Service supplier = supplier(port);
        try (Ward ward = new Ward()
                .with("lensward.hl7.lens-order-to", "127.0.0.1:" + port)
                .with("lensward.hl7.lens-order-every", "500ms")
                .with("lensward.hl7.lens-orders-sent", folder.resolve("sent").toString())) {
            DeviceRequest request = request();
            ward.client().update().resource(request).execute();
            try (Adapter adapter = ward.adapter()) {
                assertThat(adapter.record()).isNotNull();
                RunningDay.await("the order", SOON, () -> received.size() == 1);
                request.getParameterFirstRep().setValue(diopters("21.0"));
                ward.client().update().resource(request).execute();
                RunningDay.await("the change", SOON, () -> received.size() == 2);
            }
            try (Adapter again = ward.adapter()) {
                assertThat(again.record()).isNotNull();
                ward.client()
                        .update()
                        .resource(request.setStatus(DeviceRequestStatus.REVOKED))
                        .execute();
                RunningDay.await("the cancellation", SOON, () -> received.size() == 3);
            }
        } finally {
            supplier.stopAndWait();
        }
        assertThat(received)
                .containsExactly(
                        "NW plan-b1-primary QX1077^^^HOSP 21.5 [diop]",
                        "XO plan-b1-primary QX1077^^^HOSP 21.0 [diop]",
                        "CA plan-b1-primary QX1077^^^HOSP 21.0 [diop]");
    }

    private HL7Service supplier(int port) throws Exception {
        HL7Service supplier = new DefaultHapiContext().newServer(port, false);
        supplier.registerApplication(new ReceivingApplication<Message>() {
            @Override
            public Message processMessage(Message message, Map<String, Object> metadata) {
                try {
                    Terser terser = new Terser(message);
                    received.add(String.join(
                            " ",
                            terser.get("/.ORC-1"),
                            terser.get("/.ORC-2"),
                            terser.get("/.PID-3-1") + "^^^" + terser.get("/.PID-3-4"),
                            terser.get("/.OBX-5"),
                            terser.get("/.OBX-6")));
                    return message.generateACK();
                } catch (Exception wrong) {
                    throw new IllegalStateException(wrong);
                }
            }

            @Override
            public boolean canProcess(Message message) {
                return true;
            }
        });
        supplier.startAndWait();
        return supplier;
    }

    private static DeviceRequest request() {
        DeviceRequest request = new DeviceRequest();
        request.setId("plan-b1-primary");
        request.setStatus(DeviceRequestStatus.ACTIVE).setIntent(RequestIntent.PLAN);
        request.setCode(new CodeableConcept().setText("Harbour 60"));
        request.setSubject(new Reference("Patient/patient-01"));
        request.addParameter()
                .setCode(new CodeableConcept(new Coding()
                        .setSystem("https://lensward.org/fhir/CodeSystem/lens-parameter")
                        .setCode("lens-power")))
                .setValue(diopters("21.5"));
        return request;
    }

    private static Quantity diopters(String value) {
        return new Quantity()
                .setValue(new BigDecimal(value))
                .setUnit("D")
                .setSystem("http://unitsofmeasure.org")
                .setCode("[diop]");
    }
}

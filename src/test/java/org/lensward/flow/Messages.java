package org.lensward.flow;

import java.nio.charset.StandardCharsets;

/** Messages of an invented biometer and an invented booking system. */
final class Messages {

    private Messages() {}

    /** One axial length of the right eye. */
    static byte[] length(String control, String order, String patient, String millimetres) {
        return bytes(
                "MSH|^~\\&|BIOMETER|EYES|LENSWARD|EYES|20261125093000+0000||ORU^R01^ORU_R01|" + control + "|P|2.5",
                "PID|1||" + patient + "^^^HOSP^MR||Tillwick^Ada",
                "OBR|1||" + order + "^BIOMETER|BIO^Biometry|||20261125092500+0000",
                "OBX|1|NM|axial-length^Axial length^99LENSWARD||" + millimetres
                        + "|mm^^UCUM|||||F|||20261125092500+0000|||optical^^99LENSWARD|||OD");
    }

    /** A booking of the right eye. */
    static byte[] booking(String event, String control, String time, String appointment) {
        return bytes(
                "MSH|^~\\&|BOOKINGS|EYES|LENSWARD|EYES|" + time + "||SIU^" + event + "^SIU_S12|" + control + "|P|2.5",
                "SCH|P1^BOOKINGS|" + appointment + "^BOOKINGS|||||||40|min",
                "PID|1||QX1077^^^HOSP^MR||Tillwick^Ada||19521104",
                "RGS|1",
                "AIS|1||415089008^Phacoemulsification^SCT|20261203083000+0000|||40|min|||RT");
    }

    static byte[] bytes(String... segments) {
        return (String.join("\r", segments) + "\r").getBytes(StandardCharsets.UTF_8);
    }
}

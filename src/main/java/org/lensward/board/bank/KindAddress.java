package org.lensward.board.bank;

import java.util.Locale;
import java.util.Optional;
import org.hl7.fhir.r4.model.OperationOutcome.IssueType;
import org.lensward.lens.stock.LensKind;
import org.lensward.quantity.Dioptres;
import org.lensward.record.UnreadableRecord;

/**
 * A kind of lens as the address of a page carries it.
 *
 * @param model id of the catalogue entry
 * @param power such as {@code 21.50}
 * @param cylinder likewise; empty for none
 */
record KindAddress(String model, String power, String cylinder) {

    static KindAddress of(LensKind kind) {
        return new KindAddress(
                Names.id(kind.model()),
                figure(kind.power()),
                kind.cylinder().map(KindAddress::figure).orElse(""));
    }

    private static String figure(Dioptres power) {
        return String.format(Locale.ROOT, "%.2f", power.value());
    }

    /** The kind, or a refusal. */
    LensKind kind() {
        try {
            return new LensKind(
                    "DeviceDefinition/" + model,
                    Dioptres.parse(power + " D"),
                    Optional.of(cylinder).filter(each -> !each.isEmpty()).map(each -> Dioptres.parse(each + " D")));
        } catch (IllegalArgumentException unreadable) {
            throw new UnreadableRecord(IssueType.VALUE, "power", "That is no kind of lens.");
        }
    }

    String path() {
        return "/bank/kind?model=" + model + "&power=" + power + (cylinder.isEmpty() ? "" : "&cylinder=" + cylinder);
    }

    String id() {
        return "kind-" + (model + "-" + power + "-" + cylinder).replace('.', '_');
    }
}

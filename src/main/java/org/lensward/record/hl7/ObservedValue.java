package org.lensward.record.hl7;

import java.math.BigDecimal;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.hl7.fhir.r4.model.Quantity;
import org.hl7.fhir.r4.model.Quantity.QuantityComparator;
import org.hl7.fhir.r4.model.StringType;
import org.hl7.fhir.r4.model.Type;
import org.lensward.finding.FindingCode;
import org.lensward.record.Systems;
import org.lensward.record.incoming.RefusedInput;

/** OBX-5 by its type in OBX-2, with the unit of OBX-6 as it was sent. */
final class ObservedValue {

    /** NM: HL7 2.5 section 2.A.47. A comma is no decimal sign. */
    private static final Pattern NUMBER = Pattern.compile("[+-]?\\d{1,9}(\\.\\d{0,9})?");

    private static final Map<String, Optional<QuantityComparator>> COMPARATORS = Map.of(
            "", Optional.empty(),
            "=", Optional.empty(),
            "<", Optional.of(QuantityComparator.LESS_THAN),
            ">", Optional.of(QuantityComparator.GREATER_THAN),
            "<=", Optional.of(QuantityComparator.LESS_OR_EQUAL),
            ">=", Optional.of(QuantityComparator.GREATER_OR_EQUAL));

    private ObservedValue() {}

    /**
     * The value.
     *
     * @param mayLack whether the result is withdrawn or still to come, so that it needs no value
     */
    static Optional<Type> read(Fields obx, boolean mayLack) {
        if (obx.repetitions(5) > 1) {
            throw unreadable(obx, "one result has one value");
        }
        boolean empty = obx.text(5).isEmpty() && obx.text(5, 0, 2).isEmpty();
        if (empty && mayLack) {
            return Optional.empty();
        }
        if (empty) {
            throw new RefusedInput(FindingCode.MESSAGE_FIELD_MISSING, obx.at(5), obx.at(5));
        }
        return Optional.of(value(obx));
    }

    private static Type value(Fields obx) {
        return switch (obx.required(2)) {
            case "NM" -> number(obx, obx.text(5));
            case "SN" -> structured(obx);
            case "CE", "CWE", "CNE" -> obx.codes(5).get(0).concept();
            case "ST", "TX", "FT" -> new StringType(obx.text(5));
            default ->
                throw new RefusedInput(
                        FindingCode.MESSAGE_UNREADABLE, obx.at(2), obx.at(2), "this type of value is not read here");
        };
    }

    /** SN: a comparator before one number; ranges and ratios are no measurement of ours. */
    private static Quantity structured(Fields obx) {
        String comparator = obx.text(5);
        if (!COMPARATORS.containsKey(comparator) || !obx.text(5, 0, 3).isEmpty()) {
            throw unreadable(obx, "it is no single number");
        }
        Quantity quantity = number(obx, obx.text(5, 0, 2));
        COMPARATORS.get(comparator).ifPresent(quantity::setComparator);
        return quantity;
    }

    private static Quantity number(Fields obx, String text) {
        Matcher number = NUMBER.matcher(text);
        if (!number.matches()) {
            throw unreadable(obx, "it is no number");
        }
        Quantity quantity = new Quantity().setValue(new BigDecimal(text));
        String unit = obx.text(6);
        if (!unit.isEmpty()) {
            quantity.setUnit(unit);
        }
        if (!unit.isEmpty() && obx.text(6, 0, 3).equals("UCUM")) {
            quantity.setSystem(Systems.UCUM).setCode(unit);
        }
        return quantity;
    }

    private static RefusedInput unreadable(Fields obx, String why) {
        return new RefusedInput(FindingCode.MESSAGE_UNREADABLE, obx.at(5), obx.at(5), why);
    }
}

package org.lensward.record.incoming;

import ca.uhn.fhir.parser.DataFormatException;
import java.io.IOException;
import java.io.StringReader;
import java.io.UncheckedIOException;
import java.math.BigDecimal;
import java.time.DateTimeException;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;
import org.hl7.fhir.r4.model.CodeableConcept;
import org.hl7.fhir.r4.model.Coding;
import org.hl7.fhir.r4.model.DateTimeType;
import org.hl7.fhir.r4.model.Identifier;
import org.hl7.fhir.r4.model.InstantType;
import org.hl7.fhir.r4.model.Observation.ObservationStatus;
import org.hl7.fhir.r4.model.Quantity;
import org.lensward.eye.Laterality;
import org.lensward.finding.FindingCode;
import org.lensward.record.SidedCodes;
import org.lensward.record.Systems;

/**
 * Our own CSV (RFC 4180, UTF-8, first line the names of the columns): one measured value a line. The README says what each column
 * holds. A line that is not understood refuses the whole file.
 */
public final class MeasurementTable {

    /** The columns, in any order; every one must be there. */
    public static final List<String> COLUMNS = List.of(
            "result",
            "authority",
            "patient",
            "born",
            "measured",
            "sent",
            "eye",
            "code",
            "value",
            "unit",
            "method",
            "group",
            "status");

    private static final Map<String, ObservationStatus> STATES = Map.of(
            "", ObservationStatus.FINAL,
            "final", ObservationStatus.FINAL,
            "corrected", ObservationStatus.CORRECTED,
            "withdrawn", ObservationStatus.ENTEREDINERROR);

    private static final Map<String, Optional<Laterality>> EYES =
            Map.of("right", Optional.of(Laterality.RIGHT), "left", Optional.of(Laterality.LEFT), "", Optional.empty());

    private final Site site;

    private MeasurementTable(Site site) {
        this.site = site;
    }

    /** What the table brings, patient by patient. */
    public static List<Incoming> read(String csv, Site site) {
        return new MeasurementTable(site).read(csv);
    }

    private List<Incoming> read(String csv) {
        Map<List<String>, List<CSVRecord>> sheets = new LinkedHashMap<>();
        for (CSVRecord line : lines(csv)) {
            if (!line.isConsistent()) {
                throw refused(line, "it has not as many columns as the first line");
            }
            List<String> sheet =
                    List.of(line.get("authority"), line.get("patient"), line.get("born"), line.get("sent"));
            sheets.computeIfAbsent(sheet, each -> new ArrayList<>()).add(line);
        }
        return sheets.values().stream().map(this::sheet).toList();
    }

    private static List<CSVRecord> lines(String csv) {
        CSVFormat format = CSVFormat.RFC4180
                .builder()
                .setHeader()
                .setSkipHeaderRecord(true)
                .setIgnoreEmptyLines(true)
                .build();
        try (CSVParser parser =
                CSVParser.parse(new StringReader(csv.startsWith("\ufeff") ? csv.substring(1) : csv), format)) {
            if (!List.copyOf(parser.getHeaderNames()).containsAll(COLUMNS)
                    || parser.getHeaderNames().size() != COLUMNS.size()) {
                throw new RefusedInput(
                        FindingCode.FILE_UNREADABLE,
                        "line 1",
                        "line 1",
                        "the columns are " + String.join(", ", COLUMNS));
            }
            List<CSVRecord> lines = parser.getRecords();
            if (lines.isEmpty()) {
                throw new RefusedInput(FindingCode.FILE_UNREADABLE, "line 2", "line 2", "there is no measurement");
            }
            return lines;
        } catch (IOException | IllegalArgumentException | IllegalStateException | UncheckedIOException wrong) {
            throw new RefusedInput(FindingCode.FILE_UNREADABLE, "line 1", "line 1", "it is no CSV as RFC 4180 has it");
        }
    }

    private Incoming sheet(List<CSVRecord> lines) {
        CSVRecord first = lines.get(0);
        Map<String, String> ids = new HashMap<>();
        List<Result> results = new ArrayList<>();
        for (CSVRecord line : lines) {
            String id = LastingId.of("csv", first.get("authority"), filled(line, "result"));
            if (ids.containsValue(id)) {
                throw refused(line, "two lines have one result number");
            }
            ids.put(place(line), id);
            results.add(result(line));
        }
        InstantType sent = new InstantType(time(first, "sent").getValueAsString());
        return new Incoming(whom(first), Results.observations(results, each -> ids.get(each.place()), sent), false);
    }

    private Whom whom(CSVRecord line) {
        String system = site.system(filled(line, "authority"))
                .orElseThrow(() -> new RefusedInput(FindingCode.PATIENT_SYSTEM_UNKNOWN, place(line), place(line)));
        Identifier identifier = new Identifier().setSystem(system).setValue(filled(line, "patient"));
        try {
            return new Whom(place(line), List.of(identifier), Optional.of(LocalDate.parse(filled(line, "born"))));
        } catch (DateTimeException wrong) {
            throw refused(line, "born is no day as 1950-12-31 is");
        }
    }

    private static Result result(CSVRecord line) {
        CodeableConcept code =
                new CodeableConcept(new Coding().setSystem(Systems.MEASUREMENT).setCode(filled(line, "code")));
        if (!SidedCodes.isMeasurement(code)) {
            throw refused(line, "code is none of our measurement codes");
        }
        Optional<Laterality> eye = EYES.get(line.get("eye"));
        if (eye == null || eye.isEmpty() && SidedCodes.needEye(code)) {
            throw refused(line, "eye is right or left");
        }
        ObservationStatus status = STATES.get(line.get("status"));
        if (status == null) {
            throw refused(line, "status is final, corrected or withdrawn");
        }
        return new Result(
                place(line),
                line.get("group"),
                code,
                Optional.of(quantity(line)),
                eye,
                status,
                method(line),
                Optional.of(time(line, "measured")));
    }

    private static Quantity quantity(CSVRecord line) {
        String value = filled(line, "value");
        if (!value.matches("[+-]?\\d{1,9}(\\.\\d{1,9})?")) {
            throw refused(line, "value is a number with a point");
        }
        String unit = filled(line, "unit");
        return new Quantity()
                .setValue(new BigDecimal(value))
                .setUnit(unit)
                .setSystem(Systems.UCUM)
                .setCode(unit);
    }

    private static Optional<CodeableConcept> method(CSVRecord line) {
        return switch (line.get("method")) {
            case "" -> Optional.empty();
            case "optical" -> Optional.of(method(Systems.BIOMETRY_METHOD, "optical"));
            case "immersion" -> Optional.of(method(Systems.DICOM, "111751"));
            case "contact" -> Optional.of(method(Systems.DICOM, "111750"));
            default -> throw refused(line, "method is optical, immersion or contact");
        };
    }

    private static CodeableConcept method(String system, String code) {
        return new CodeableConcept(new Coding().setSystem(system).setCode(code));
    }

    private static DateTimeType time(CSVRecord line, String column) {
        String text = filled(line, column);
        boolean whole = text.matches("\\d{4}-\\d\\d-\\d\\dT\\d\\d:\\d\\d:\\d\\d(Z|[+-]\\d\\d:\\d\\d)");
        try {
            if (whole) {
                return new DateTimeType(text);
            }
        } catch (DataFormatException | IllegalArgumentException wrong) {
            throw refused(line, column + " is no such time");
        }
        throw refused(line, column + " is a time as 2026-11-25T09:30:00Z is");
    }

    private static String filled(CSVRecord line, String column) {
        String text = line.get(column).trim();
        if (text.isEmpty()) {
            throw refused(line, column + " is empty");
        }
        return text;
    }

    private static String place(CSVRecord line) {
        return "line " + (line.getRecordNumber() + 1);
    }

    private static RefusedInput refused(CSVRecord line, String why) {
        return new RefusedInput(FindingCode.FILE_UNREADABLE, place(line), place(line), why);
    }
}

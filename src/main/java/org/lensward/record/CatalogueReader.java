package org.lensward.record;

import static org.lensward.finding.FindingCode.LENS_MODEL_UNREADABLE;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.function.Predicate;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.hl7.fhir.r4.model.CodeableConcept;
import org.hl7.fhir.r4.model.DeviceDefinition;
import org.hl7.fhir.r4.model.DeviceDefinition.DeviceDefinitionPropertyComponent;
import org.hl7.fhir.r4.model.Quantity;
import org.lensward.eye.BiometryMethod;
import org.lensward.finding.Evidence;
import org.lensward.finding.Finding;
import org.lensward.lens.Catalogue;
import org.lensward.lens.Focus;
import org.lensward.lens.LensDesign;
import org.lensward.lens.LensDesign.Build;
import org.lensward.lens.LensModel;
import org.lensward.lens.LensSite;
import org.lensward.lens.OpticMaterial;
import org.lensward.lens.PowerRange;
import org.lensward.optics.HaigisConstants;
import org.lensward.optics.LensConstants;
import org.lensward.quantity.Dioptres;
import org.lensward.quantity.Millimetres;
import org.lensward.quantity.PureNumber;

/** Reads the hospital's lens models. A model that cannot be read whole is left out with a finding; it is never read in part. */
public final class CatalogueReader {

    private final Evidences evidences;
    private final List<Finding> found = new ArrayList<>();

    /** A reader that names what it reads as that one does. */
    public CatalogueReader(Evidences evidences) {
        this.evidences = evidences;
    }

    /** Every lens model on the shelf that can be read. */
    public Catalogue read(Shelf shelf) {
        Stream<DeviceDefinition> lenses =
                shelf.all(DeviceDefinition.class).filter(definition -> LensCodes.isLens(definition.getType()));
        return new Catalogue(lenses.flatMap(lens -> model(lens).stream()).toList());
    }

    List<Finding> found() {
        return found;
    }

    private Optional<LensModel> model(DeviceDefinition lens) {
        Evidence evidence = evidences.of(lens, "");
        try {
            Map<BiometryMethod, LensConstants> constants = constants(lens);
            List<PowerRange> ranges = property(lens, ours("power-range"))
                    .map(CatalogueReader::range)
                    .toList();
            LensSite site = site(lens);
            require(!ranges.isEmpty(), "it has no power-range");
            require(!constants.isEmpty(), "it has no constants");
            return Optional.of(new LensModel(
                    evidence,
                    name(lens),
                    site,
                    houseLens(lens),
                    optic(lens),
                    ranges,
                    cylinders(lens),
                    constants,
                    design(lens)));
        } catch (IllegalArgumentException unreadable) {
            found.add(Finding.of(
                    LENS_MODEL_UNREADABLE, evidence.at("property"), name(lens) + ": " + unreadable.getMessage()));
            return Optional.empty();
        }
    }

    private static String name(DeviceDefinition lens) {
        return lens.hasDeviceName() ? lens.getDeviceNameFirstRep().getName() : Shelf.name(lens);
    }

    private static LensSite site(DeviceDefinition lens) {
        List<String> codes = property(lens, ours("placement"))
                .flatMap(each -> Codes.in(each.getValueCode(), Systems.LENS_SITE).stream())
                .toList();
        require(codes.size() == 1, "it has not one placement");
        for (LensSite site : LensSite.values()) {
            if (code(site).equals(codes.get(0))) {
                return site;
            }
        }
        throw new IllegalArgumentException("its placement '" + codes.get(0) + "' is not known");
    }

    static String code(LensSite site) {
        return site.toString().replace(' ', '-');
    }

    private static boolean houseLens(DeviceDefinition lens) {
        return property(lens, ours("house-lens"))
                .flatMap(each -> each.getValueCode().stream())
                .anyMatch(value -> "true".equals(value.getText()));
    }

    private static Optional<Millimetres> optic(DeviceDefinition lens) {
        return property(lens, ours("optic-diameter"))
                .findFirst()
                .map(each -> Millimetres.of(number(each, 0, UnitKind.LENGTH)));
    }

    private static List<Dioptres> cylinders(DeviceDefinition lens) {
        return property(lens, ours("cylinders"))
                .flatMap(each -> IntStream.range(0, each.getValueQuantity().size())
                        .mapToObj(index -> Dioptres.of(number(each, index, UnitKind.POWER))))
                .toList();
    }

    private static LensDesign design(DeviceDefinition lens) {
        return new LensDesign(
                coded(lens, "focus", Systems.LENS_FOCUS, Focus.values(), Focus::code),
                coded(lens, "material", Systems.OPTIC_MATERIAL, OpticMaterial.values(), OpticMaterial::code),
                coded(lens, "build", Systems.LENS_BUILD, Build.values(), Build::code));
    }

    /** What the property says; nothing where it is absent; a code we do not know makes the model unreadable. */
    private static <T> Optional<T> coded(
            DeviceDefinition lens, String property, String system, T[] values, Function<T, String> code) {
        return property(lens, ours(property))
                .findFirst()
                .map(each -> Codes.in(each.getValueCode(), system).orElse(""))
                .map(given -> Stream.of(values)
                        .filter(value -> code.apply(value).equals(given))
                        .findFirst()
                        .orElseThrow(() ->
                                new IllegalArgumentException("its " + property + " '" + given + "' is not known")));
    }

    private static PowerRange range(DeviceDefinitionPropertyComponent property) {
        require(property.getValueQuantity().size() == 3, "a power-range is not lowest, highest and step");
        return new PowerRange(
                Dioptres.of(number(property, 0, UnitKind.POWER)),
                Dioptres.of(number(property, 1, UnitKind.POWER)),
                Dioptres.of(number(property, 2, UnitKind.POWER)));
    }

    private static Map<BiometryMethod, LensConstants> constants(DeviceDefinition lens) {
        property(lens, LensCodes::isConstant)
                .forEach(each -> require(
                        MeasurementReader.method(each.getValueCode()).isPresent(),
                        Codes.words(each.getType()) + " names no biometry method"));
        Map<BiometryMethod, LensConstants> constants = new EnumMap<>(BiometryMethod.class);
        for (BiometryMethod method : BiometryMethod.values()) {
            LensConstants published = LensConstants.published(
                    constant(lens, Systems.SNOMED, LensCodes.A_CONSTANT, method, UnitKind.NUMBER)
                            .map(PureNumber::of),
                    constant(lens, Systems.DICOM, "111773", method, UnitKind.LENGTH)
                            .map(Millimetres::of),
                    constant(lens, Systems.DICOM, "111772", method, UnitKind.LENGTH)
                            .map(Millimetres::of),
                    haigis(lens, method));
            if (!published.isEmpty()) {
                constants.put(method, published);
            }
        }
        return constants;
    }

    private static Optional<HaigisConstants> haigis(DeviceDefinition lens, BiometryMethod method) {
        Optional<Double> a0 = constant(lens, Systems.DICOM, "111769", method, UnitKind.LENGTH);
        Optional<Double> a1 = constant(lens, Systems.DICOM, "111770", method, UnitKind.NUMBER);
        Optional<Double> a2 = constant(lens, Systems.DICOM, "111771", method, UnitKind.NUMBER);
        long given = Stream.of(a0, a1, a2).filter(Optional::isPresent).count();
        require(given == 0 || given == 3, "it has some but not all of Haigis' a0, a1 and a2 for " + method);
        return a0.map(value -> new HaigisConstants(
                Millimetres.of(value), PureNumber.of(a1.orElseThrow()), PureNumber.of(a2.orElseThrow())));
    }

    private static Optional<Double> constant(
            DeviceDefinition lens, String system, String code, BiometryMethod method, UnitKind unit) {
        List<DeviceDefinitionPropertyComponent> given = property(lens, type -> Codes.has(type, system, code))
                .filter(each -> MeasurementReader.method(each.getValueCode())
                        .filter(method::equals)
                        .isPresent())
                .toList();
        require(given.size() <= 1, "it has two constants " + code + " for " + method);
        return given.stream().findFirst().map(each -> number(each, 0, unit));
    }

    private static double number(DeviceDefinitionPropertyComponent property, int index, UnitKind kind) {
        require(property.getValueQuantity().size() > index, Codes.words(property.getType()) + " has no value");
        Quantity quantity = property.getValueQuantity().get(index);
        require(quantity.hasValue(), Codes.words(property.getType()) + " has no value");
        String unit = quantity.hasCode() ? quantity.getCode() : "";
        double factor = kind.factor(unit)
                .orElseThrow(() -> new IllegalArgumentException(
                        Codes.words(property.getType()) + " has the unit '" + unit + "', not " + kind.accepted()));
        return quantity.getValue().doubleValue() * factor;
    }

    private static Stream<DeviceDefinitionPropertyComponent> property(
            DeviceDefinition lens, Predicate<CodeableConcept> type) {
        return lens.getProperty().stream().filter(each -> type.test(each.getType()));
    }

    private static Predicate<CodeableConcept> ours(String code) {
        return type -> Codes.has(type, Systems.LENS_PROPERTY, code);
    }

    private static void require(boolean condition, String otherwise) {
        if (!condition) {
            throw new IllegalArgumentException(otherwise);
        }
    }
}

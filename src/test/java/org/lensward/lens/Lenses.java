package org.lensward.lens;

import static org.lensward.eye.Policies.limit;
import static org.lensward.optics.FormulaName.HAIGIS;
import static org.lensward.optics.FormulaName.HOFFER_Q;
import static org.lensward.optics.FormulaName.SRK_T;

import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.lensward.eye.Biometry;
import org.lensward.eye.BiometryMethod;
import org.lensward.finding.Evidence;
import org.lensward.finding.Outcome;
import org.lensward.optics.Formulas;
import org.lensward.optics.HaigisConstants;
import org.lensward.optics.LensConstants;
import org.lensward.optics.LongEyeAdjustment;
import org.lensward.optics.ThinEye;
import org.lensward.optics.toric.PosteriorCornea;
import org.lensward.quantity.Degrees;
import org.lensward.quantity.Dioptres;
import org.lensward.quantity.Millimetres;
import org.lensward.quantity.PureNumber;

/** Invented lens models and the lens policy that tests are made with. */
public final class Lenses {

    private static final String NICE = "NICE guideline NG77, 2017 (value from memory)";
    private static final String COMMON = "common practice, no source";

    /** Each constant lies where constants of lenses for the capsular bag usually lie. */
    public static final LensConstants CONSTANTS = LensConstants.published(
            Optional.of(PureNumber.of(118.4)),
            Optional.of(Millimetres.of(1.45)),
            Optional.of(Millimetres.of(5.20)),
            Optional.of(new HaigisConstants(Millimetres.of(1.30), PureNumber.of(0.4), PureNumber.of(0.1))));

    private Lenses() {}

    public static LensPolicy policy(TargetSide side) {
        return new LensPolicy(
                limit(Dioptres.of(0), COMMON),
                side,
                limit(Millimetres.of(22.00), NICE),
                limit(Millimetres.of(26.00), NICE),
                List.of(HAIGIS, HOFFER_Q),
                List.of(SRK_T),
                List.of(HAIGIS, SRK_T),
                limit(Dioptres.of(0.50), COMMON),
                limit(Millimetres.of(0.50), COMMON),
                LongEyeAdjustment.NONE,
                limit(Dioptres.of(0.50), COMMON),
                limit(Dioptres.of(0.75), COMMON),
                limit(Dioptres.of(2.50), COMMON),
                limit(Dioptres.of(39.50), COMMON),
                limit(Dioptres.of(49.00), COMMON),
                limit(PureNumber.of(0.5), COMMON),
                PosteriorCornea.ABULAFIA_KOCH,
                Map.of(
                        LensPolicy.ANY_SURGEON,
                        new SurgeonIncision(limit(Dioptres.of(0.1), COMMON), limit(Degrees.of(180), COMMON))));
    }

    /** Lengths told to long eyes as a paper has it. */
    public static LensPolicy adjusting(LensPolicy policy, LongEyeAdjustment adjustment) {
        return with(policy, adjustment, policy.posteriorCornea(), policy.incisions());
    }

    /** What is added to the astigmatism measured in front. */
    public static LensPolicy adding(LensPolicy policy, PosteriorCornea back, Map<String, SurgeonIncision> incisions) {
        return with(policy, policy.longEyeAdjustment(), back, incisions);
    }

    private static LensPolicy with(
            LensPolicy policy,
            LongEyeAdjustment adjustment,
            PosteriorCornea back,
            Map<String, SurgeonIncision> incisions) {
        return new LensPolicy(
                policy.target(),
                policy.side(),
                policy.shortEye(),
                policy.longEye(),
                policy.forShortEyes(),
                policy.forOtherEyes(),
                policy.forLongEyes(),
                policy.formulasApart(),
                policy.sulcusForward(),
                adjustment,
                policy.hyperopicTarget(),
                policy.beyondTarget(),
                policy.eyesApart(),
                policy.suspectFlatCornea(),
                policy.suspectSteepCornea(),
                policy.secondEyeFraction(),
                back,
                incisions);
    }

    /** An incision of that many dioptres at that meridian. */
    public static SurgeonIncision incision(double flattening, double meridian) {
        return new SurgeonIncision(limit(Dioptres.of(flattening), COMMON), limit(Degrees.of(meridian), COMMON));
    }

    /** The published formulas, as they see an eye that nobody lasered and that is not long. */
    static List<PlanningMethod> standard() {
        return Formulas.all().stream().map(PlanningMethod::asPublished).toList();
    }

    static Outcome<FormulaViews> views(LensModel model, Biometry biometry) {
        return FormulaViews.of(model, new MeasuredEye(biometry, Optional.empty()), standard());
    }

    /** A thin eye as any one formula might have made it. */
    static FormulaView view(ThinEye eye) {
        return new FormulaView(standard().get(0), eye, CONSTANTS, Dioptres.of(0));
    }

    public static LensModel bag() {
        return model("bag", LensSite.CAPSULAR_BAG, CONSTANTS);
    }

    /** The same constants as in the bag: how the model would sit there, before it is moved forward. */
    public static LensModel sulcus() {
        return model("sulcus", LensSite.SULCUS, CONSTANTS);
    }

    /** An A-constant of its own, as lenses before the iris usually have. */
    public static LensModel anteriorChamber() {
        return model("chamber", LensSite.ANTERIOR_CHAMBER, aConstant(115.3));
    }

    public static LensConstants aConstant(double a) {
        return LensConstants.published(
                Optional.of(PureNumber.of(a)), Optional.empty(), Optional.empty(), Optional.empty());
    }

    public static Catalogue catalogue() {
        return new Catalogue(List.of(bag(), sulcus(), anteriorChamber()));
    }

    /** For eyes measured by light, made from 6 to 30 D in half dioptres. */
    public static LensModel model(String id, LensSite site, LensConstants constants) {
        return new LensModel(
                new Evidence("DeviceDefinition/" + id, "1", ""),
                "the " + id + " lens",
                site,
                false,
                Optional.of(Millimetres.of(6)),
                List.of(range(6, 30, 0.5)),
                Map.of(BiometryMethod.OPTICAL, constants));
    }

    /** The same model for an eye measured in that way, by the same constants. */
    public static LensModel measuredBy(LensModel model, BiometryMethod method) {
        return new LensModel(
                model.evidence(),
                model.name(),
                model.site(),
                model.houseLens(),
                model.opticDiameter(),
                model.ranges(),
                model.cylinders(),
                Map.of(method, CONSTANTS),
                model.design());
    }

    /** The same model with labelled cylinders at the lens plane. */
    public static LensModel toric(LensModel model, double... cylinders) {
        return new LensModel(
                model.evidence(),
                model.name(),
                model.site(),
                model.houseLens(),
                model.opticDiameter(),
                model.ranges(),
                Arrays.stream(cylinders).mapToObj(Dioptres::of).toList(),
                model.constants(),
                model.design());
    }

    public static LensModel madeIn(LensModel model, PowerRange... ranges) {
        return new LensModel(
                model.evidence(),
                model.name(),
                model.site(),
                model.houseLens(),
                model.opticDiameter(),
                List.of(ranges),
                model.constants());
    }

    public static LensModel houseLens(LensModel model) {
        return new LensModel(
                model.evidence(),
                model.name(),
                model.site(),
                true,
                model.opticDiameter(),
                model.ranges(),
                model.constants());
    }

    public static PowerRange range(double lowest, double highest, double step) {
        return new PowerRange(Dioptres.of(lowest), Dioptres.of(highest), Dioptres.of(step));
    }
}

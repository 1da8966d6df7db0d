package org.lensward.outcome;

import java.time.LocalDate;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.SplittableRandom;
import java.util.stream.LongStream;
import java.util.stream.Stream;
import org.lensward.eye.Biometry;
import org.lensward.eye.BiometryMethod;
import org.lensward.eye.Keratometry;
import org.lensward.eye.Laterality;
import org.lensward.eye.Measured;
import org.lensward.finding.Evidence;
import org.lensward.lens.LensSite;
import org.lensward.lens.MeasuredEye;
import org.lensward.optics.FormulaName;
import org.lensward.optics.Formulas;
import org.lensward.optics.LensConstants;
import org.lensward.optics.ThinEye;
import org.lensward.quantity.Degrees;
import org.lensward.quantity.Dioptres;
import org.lensward.quantity.Millimetres;
import org.lensward.quantity.Probability;
import org.lensward.quantity.PureNumber;

/**
 * Eyes that one formula with known constants describes exactly, but for noise of a known size. Spread of length, curvature and depth as in
 * ordinary populations (value from memory). The same seed gives the same eyes; nothing is kept in memory.
 *
 * @param law the formula that holds for these eyes, with the constants that are true
 * @param used the constants their plans were made with
 * @param noise standard deviation of the refraction about the law, D
 * @param eyes how many
 * @param parts in how many parts they come
 * @param seed of chance
 */
public record SimulatedEyes(Law law, LensConstants used, double noise, long eyes, int parts, long seed)
        implements OperatedEyes {

    /** What holds. */
    public record Law(FormulaName formula, LensConstants truth) {}

    private static final Evidence EVIDENCE = new Evidence("Observation/simulated", "1", "value");
    private static final LocalDate START = LocalDate.of(2024, 1, 1);
    private static final Refraction.Cylinder CYLINDER =
            new Refraction.Cylinder(Dioptres.of(0.5), Refraction.Form.MINUS, Optional.of(Degrees.of(90)));
    private static final List<String> MODELS = List.of("model-a", "model-b", "model-c");

    @Override
    public Stream<OperatedEye> part(int index) {
        long from = eyes * index / parts;
        long to = eyes * (index + 1) / parts;
        return LongStream.range(from, to).mapToObj(this::eye);
    }

    /** Every eye is of another patient; its number alone decides all of it. */
    public OperatedEye eye(long number) {
        SplittableRandom random = new SplittableRandom(seed * 1_000_003 + number);
        Biometry biometry = biometry(random, number);
        ThinEye planned = see(biometry, used);
        double ideal = planned.power(Dioptres.of(-0.25)).value();
        Dioptres power = Dioptres.of(Math.rint(ideal * 2) / 2);
        double achieved = see(biometry, law.truth()).refraction(power).value() + noise * random.nextGaussian();
        LocalDate day = START.plusDays(number % 700);
        Refraction refraction = new Refraction(
                biometry.eye(),
                day.plusDays(28),
                Refraction.Way.SUBJECTIVE,
                Dioptres.of(achieved + 0.25),
                Optional.of(CYLINDER),
                Optional.of(ThinEye.VERTEX_DISTANCE),
                Optional.of(new Acuity(PureNumber.of(1))));
        double risk = 0.005 + 0.01 * random.nextInt(4);
        boolean rupture = random.nextDouble() < risk;
        return new OperatedEye(
                new EyeKeys(padded("p", number), padded("o", number)),
                biometry.eye(),
                day,
                "Practitioner/s" + number % 10,
                new ImplantedLens(
                        MODELS.get((int) (number / 10 % MODELS.size())),
                        power,
                        Optional.empty(),
                        Optional.of(LensSite.CAPSULAR_BAG)),
                new BeforeSurgery(
                        Optional.of(biometry),
                        Optional.of(used),
                        Map.of(),
                        Optional.of(Dioptres.of(-0.25)),
                        Optional.of(Probability.of(risk)),
                        Optional.empty(),
                        Optional.empty()),
                new AfterSurgery(
                        true,
                        rupture ? Set.of(Complication.CAPSULE_RUPTURE) : Set.of(),
                        Optional.empty(),
                        List.of(refraction),
                        Optional.empty()));
    }

    private static String padded(String letter, long number) {
        return letter + Long.toString(10_000_000_000L + number).substring(1);
    }

    private static Biometry biometry(SplittableRandom random, long number) {
        double length = Math.max(20.5, Math.min(28, 23.6 + 1.1 * random.nextGaussian()));
        double power = Math.max(39, Math.min(48, 43.6 + 1.4 * random.nextGaussian()));
        double depth = 3.1 + 0.15 * (length - 23.6) + 0.3 * random.nextGaussian();
        Laterality side = number % 2 == 0 ? Laterality.RIGHT : Laterality.LEFT;
        Millimetres radius = Millimetres.of(337.5 / power);
        return new Biometry(
                side,
                BiometryMethod.OPTICAL,
                START.minusDays(30),
                measured(Millimetres.of(length)),
                measured(new Keratometry(radius, radius, Optional.empty())),
                new Biometry.Details(
                        Optional.of(measured(Millimetres.of(depth))),
                        Optional.empty(),
                        Optional.empty(),
                        Optional.empty(),
                        Optional.empty()));
    }

    private static <T> Measured<T> measured(T value) {
        return new Measured<>(value, EVIDENCE);
    }

    private ThinEye see(Biometry biometry, LensConstants constants) {
        return Formulas.named(law.formula())
                .see(new MeasuredEye(biometry, Optional.empty()).shape(), constants, EVIDENCE)
                .value()
                .orElseThrow();
    }

    @Override
    public String toString() {
        return String.format(Locale.ROOT, "%,d eyes of %s, noise %.2f D", eyes, law.formula(), noise);
    }
}

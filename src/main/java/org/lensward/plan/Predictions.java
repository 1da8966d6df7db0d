package org.lensward.plan;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.lensward.eye.Measured;
import org.lensward.lens.FormulaView;
import org.lensward.lens.FormulaViews;
import org.lensward.lens.LensKit;
import org.lensward.lens.MeasuredEye;
import org.lensward.optics.ThickEye;
import org.lensward.optics.ThickImplant;
import org.lensward.optics.accuracy.ErrorBudget;
import org.lensward.optics.accuracy.Landing;
import org.lensward.optics.accuracy.SpreadPolicy;
import org.lensward.optics.accuracy.Spreads;
import org.lensward.quantity.Dioptres;
import org.lensward.quantity.Millimetres;
import org.lensward.quantity.RefractiveIndex;

/** What every method says of the chosen lens and of its neighbours, and how sure each is. */
final class Predictions {

    private static final int NEIGHBOURS = 2;

    /** An optic of common make; no source. The explanation hardly depends on it. */
    private static final Millimetres OPTIC_THICKNESS = Millimetres.of(0.8);

    private static final RefractiveIndex OPTIC_INDEX = RefractiveIndex.of(1.47);

    private static final Dioptres HALF = Dioptres.of(0.5);
    private static final Dioptres ONE = Dioptres.of(1);

    List<Prediction> of(FormulaViews views, LensKit kit, FormulaView trusted, MeasuredEye measured, Dioptres target) {
        Dioptres label = kit.primary().power();
        List<Dioptres> near = near(kit.primary().model().powers(), label);
        Spreads spreads = spreads(measured);
        List<Prediction> predictions = new ArrayList<>();
        for (FormulaView view : views.all()) {
            List<PowerRow> table = near.stream()
                    .map(power -> new PowerRow(power, view.refraction(power)))
                    .toList();
            predictions.add(new Prediction(
                    view,
                    view.power(target),
                    view.refraction(label),
                    view == trusted,
                    uncertainty(view, label, spreads, target),
                    table,
                    thick(view, label, measured)));
        }
        return predictions;
    }

    private static Optional<Dioptres> thick(FormulaView view, Dioptres label, MeasuredEye measured) {
        if (view.method().reported().isPresent() || measured.oilStays().isPresent()) {
            return Optional.empty();
        }
        ThickImplant implant = ThickImplant.equiconvex(label, OPTIC_THICKNESS, OPTIC_INDEX);
        return Optional.of(
                ThickEye.behind(measured.shape(), view.eye(), implant).refraction());
    }

    private static Spreads spreads(MeasuredEye measured) {
        Spreads usual = SpreadPolicy.usual().of(measured.biometry().method(), measured.shape());
        return measured.biometry()
                .details()
                .lengthScatter()
                .map(Measured::value)
                .map(usual::withLengthScatter)
                .orElse(usual);
    }

    /** By the eye's own error budget, or by the scatter that was published for a method after laser. */
    private static Uncertainty uncertainty(FormulaView view, Dioptres label, Spreads spreads, Dioptres target) {
        Dioptres offset = view.refraction(label).minus(target);
        if (view.method().reported().isPresent()) {
            Dioptres deviation = view.method().reported().get().deviation();
            return new Uncertainty(
                    deviation,
                    Landing.within(HALF, offset, deviation),
                    Landing.within(ONE, offset, deviation),
                    "the reshaped cornea");
        }
        ErrorBudget budget = ErrorBudget.of(view.eye(), label.minus(view.oil()), spreads);
        return new Uncertainty(
                budget.deviation(),
                Landing.within(HALF, offset, budget.deviation()),
                Landing.within(ONE, offset, budget.deviation()),
                budget.largest().contributor().toString());
    }

    private static List<Dioptres> near(List<Dioptres> powers, Dioptres choice) {
        int at = powers.indexOf(choice);
        return powers.subList(Math.max(0, at - NEIGHBOURS), Math.min(powers.size(), at + NEIGHBOURS + 1));
    }
}

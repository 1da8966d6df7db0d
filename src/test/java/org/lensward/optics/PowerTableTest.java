package org.lensward.optics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;
import static org.lensward.finding.FindingCode.FORMULAS_DISAGREE;
import static org.lensward.optics.OpticsSpecimen.SOMEWHERE;

import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.lensward.finding.Finding;
import org.lensward.quantity.Dioptres;

class PowerTableTest {

    private static final EyeShape SHAPE = OpticsSpecimen.shape(23.5, 43.5);
    private static final List<Dioptres> POWERS = IntStream.rangeClosed(36, 48)
            .mapToObj(half -> Dioptres.of(half / 2.0))
            .toList();

    private final PowerTable table = PowerTable.of(
            POWERS,
            Formulas.all().stream()
                    .map(formula -> new SeenEye(formula.name(), OpticsSpecimen.seen(formula, SHAPE)))
                    .toList());

    @Test
    void a_row_says_what_each_formula_predicts() {
        PowerTable.Row row = table.rows().get(0);
        assertThat(row.predictions())
                .extracting(Prediction::formula)
                .containsExactlyElementsOf(
                        Formulas.all().stream().map(Formula::name).toList());
        assertThat(row.predictions().get(0).refraction())
                .isEqualTo(OpticsSpecimen.seen(new SrkT(), SHAPE).refraction(row.power()));
    }

    @Test
    void a_stronger_lens_leaves_less_plus() {
        for (int i = 1; i < table.rows().size(); i++) {
            assertThat(table.rows().get(i).predictions().get(1).refraction())
                    .isLessThan(table.rows().get(i - 1).predictions().get(1).refraction());
        }
    }

    @Test
    void a_table_can_be_cut_to_the_rows_around_a_choice() {
        assertThat(table.around(Dioptres.of(21), 2).rows())
                .extracting(row -> row.power().value())
                .containsExactly(20.0, 20.5, 21.0, 21.5, 22.0);
        assertThat(table.around(Dioptres.of(18), 1).rows()).hasSize(2);
        assertThatIllegalArgumentException().isThrownBy(() -> table.around(Dioptres.of(21.2), 2));
    }

    @Test
    void formulas_that_lie_apart_are_a_finding() {
        PowerTable.Row apart = row(-0.30, 0.21);
        PowerTable.Row together = row(-0.25, 0.25);
        assertThat(apart.disagreement().value()).isCloseTo(0.51, within(1e-12));
        assertThat(ResultGuards.disagreement(apart, ResultGuards.usualDisagreement(), SOMEWHERE))
                .map(Finding::code)
                .contains(FORMULAS_DISAGREE);
        assertThat(ResultGuards.disagreement(together, ResultGuards.usualDisagreement(), SOMEWHERE))
                .isEmpty();
        assertThat(new PowerTable.Row(Dioptres.of(21), List.of()).disagreement().value())
                .isZero();
    }

    private static PowerTable.Row row(double first, double second) {
        return new PowerTable.Row(
                Dioptres.of(21),
                List.of(
                        new Prediction(FormulaName.SRK_T, Dioptres.of(first)),
                        new Prediction(FormulaName.HAIGIS, Dioptres.of(second))));
    }
}

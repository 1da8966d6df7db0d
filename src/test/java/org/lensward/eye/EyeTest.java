package org.lensward.eye;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import java.time.LocalDate;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.lensward.finding.Evidence;
import org.lensward.quantity.Millimetres;

class EyeTest {

    @Nested
    class An_eye {

        @Test
        void has_no_biometry_of_the_other_eye() {
            Biometry ofLeft =
                    Specimen.ordinary(Laterality.LEFT, LocalDate.of(2026, 1, 5)).biometry();
            assertThatIllegalArgumentException()
                    .isThrownBy(() -> new Eye(
                            Laterality.RIGHT,
                            Optional.of(ofLeft),
                            new History(List.of()),
                            List.of(),
                            Optional.empty(),
                            Optional.empty()));
        }

        @Test
        void has_one_fellow_whose_fellow_it_is() {
            assertThat(Laterality.RIGHT.fellow()).isEqualTo(Laterality.LEFT);
            assertThat(Laterality.LEFT.fellow()).isEqualTo(Laterality.RIGHT);
        }
    }

    @Nested
    class A_history {

        private static final Evidence OLD = new Evidence("Condition/1", "1", "code");
        private static final Evidence NEW = new Evidence("Condition/2", "1", "code");
        private final History.Entry yes = new History.Entry(Sign.GLAUCOMA, true, "glaucoma", OLD);
        private final History.Entry alsoYes = new History.Entry(Sign.GLAUCOMA, true, "glaucoma", NEW);
        private final History.Entry no = new History.Entry(Sign.GLAUCOMA, false, "no glaucoma", NEW);

        @Test
        void that_is_silent_leaves_a_sign_unknown_not_absent() {
            History silent = new History(List.of());
            assertThat(silent.unknown(Sign.GLAUCOMA)).isTrue();
            assertThat(silent.denied(Sign.GLAUCOMA)).isFalse();
            assertThat(silent.affirmed(Sign.GLAUCOMA)).isEmpty();
        }

        @Test
        void that_denies_a_sign_knows_it_absent() {
            History denies = new History(List.of(no));
            assertThat(denies.denied(Sign.GLAUCOMA)).isTrue();
            assertThat(denies.unknown(Sign.GLAUCOMA)).isFalse();
            assertThat(denies.unknown(Sign.APHAKIA)).isTrue();
        }

        @Test
        void that_contradicts_itself_affirms() {
            History both = new History(List.of(no, yes));
            assertThat(both.affirmed(Sign.GLAUCOMA)).contains(yes);
            assertThat(both.denied(Sign.GLAUCOMA)).isFalse();
        }

        @Test
        void reads_the_same_in_whatever_order_it_was_found_and_says_nothing_twice() {
            List<History.Entry> entries = List.of(alsoYes, yes, alsoYes);
            List<History.Entry> reversed = new java.util.ArrayList<>(entries);
            Collections.reverse(reversed);
            assertThat(new History(entries)).isEqualTo(new History(reversed));
            assertThat(new History(entries).entries()).containsExactly(yes, alsoYes);
        }
    }

    @Test
    void a_person_prints_nothing_that_identifies() {
        Evidence patient = new Evidence("Patient/7", "1", "");
        Person person = new Person(
                patient,
                Optional.of(LocalDate.of(1948, 5, 6)),
                Sex.FEMALE,
                List.of(new Allergy(Set.of(Allergen.CEPHALOSPORIN), false, "cephalosporin", patient)));
        assertThat(person.toString()).isEqualTo("Patient/7").doesNotContain("1948", "FEMALE", "cephalosporin");
    }

    @Test
    void a_limit_names_its_source() {
        assertThatIllegalArgumentException().isThrownBy(() -> new Limit<>(Millimetres.of(1), " "));
    }

    @Test
    void signs_sides_and_methods_read_as_words() {
        assertThat(Sign.BROWN_OR_WHITE_LENS).hasToString("brown or white lens");
        assertThat(Laterality.RIGHT).hasToString("right");
        assertThat(BiometryMethod.OPTICAL).hasToString("light");
    }
}

package org.lensward.optics.toric;

import org.lensward.quantity.Dioptres;

/** Ways to guess what the back of the cornea adds to the astigmatism measured in front. */
public enum PosteriorCornea {
    /** The anterior astigmatism alone. */
    NEGLECTED {
        @Override
        public Astigmatism net(Astigmatism anterior) {
            return anterior;
        }
    },

    /**
     * Abulafia, Koch, Wang, Hill, Assia, Franchina and Barrett, J Cataract Refract Surg 2016;42:663-671; coefficients from memory.
     *
     * <pre>
     * x' = 0.508 + 0.926 x
     * y' = 0.009 + 0.932 y
     * </pre>
     *
     * in D, x positive against the rule: with the rule the net astigmatism is less than measured, against the rule more.
     */
    ABULAFIA_KOCH {
        @Override
        public Astigmatism net(Astigmatism anterior) {
            return new Astigmatism(
                    Dioptres.of(0.508 + 0.926 * anterior.x().value()),
                    Dioptres.of(0.009 + 0.932 * anterior.y().value()));
        }
    },

    /**
     * Eom, Rhim, Kang, Kim, Song and Kim, Am J Ophthalmol 2016;161:717, abstract: the posterior cornea has -(0.15 C + 0.22) at 90
     * degrees for a cornea with the rule, -(0.05 C + 0.27) for an oblique one, -0.27 for one against the rule.
     */
    EOM {
        @Override
        public Astigmatism net(Astigmatism anterior) {
            double c = anterior.magnitude().value();
            double posterior =
                    switch (anterior.rule()) {
                        case WITH -> 0.15 * c + 0.22;
                        case OBLIQUE -> 0.05 * c + 0.27;
                        case AGAINST -> 0.27;
                    };
            // -c at 90 degrees is x = -c cos 180 = +c
            return new Astigmatism(Dioptres.of(anterior.x().value() + posterior), anterior.y());
        }
    };

    /** The astigmatism of the whole cornea. */
    public abstract Astigmatism net(Astigmatism anterior);
}

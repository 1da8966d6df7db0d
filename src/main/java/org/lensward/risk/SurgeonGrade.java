package org.lensward.risk;

import org.lensward.finding.Coded;

/** The operating surgeon's grade in the classes of Narendran et al., Eye 2009;23:31-37. */
public enum SurgeonGrade implements Coded {
    CONSULTANT(1),
    ASSOCIATE_SPECIALIST(0.87),
    STAFF_GRADE(0.36),
    FELLOW(1.65),
    REGISTRAR(1.60),
    SENIOR_HOUSE_OFFICER(3.73);

    private final double oddsRatio;

    SurgeonGrade(double oddsRatio) {
        this.oddsRatio = oddsRatio;
    }

    double oddsRatio() {
        return oddsRatio;
    }
}

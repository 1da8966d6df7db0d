package org.lensward.plan;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.lensward.eye.Biometry;
import org.lensward.eye.Eye;
import org.lensward.eye.EyeSurgery;
import org.lensward.eye.History;
import org.lensward.eye.Measured;
import org.lensward.finding.Evidence;
import org.lensward.finding.Finding;

/** Every resource a plan rests on, each once. */
final class Basis {

    private final List<Evidence> all = new ArrayList<>();

    private Basis() {}

    static List<Evidence> of(PlanningCase booked, Made made, List<Finding> findings) {
        Basis basis = new Basis();
        basis.all.add(booked.booking().evidence());
        basis.all.add(booked.person().evidence());
        booked.person().noAllergy().ifPresent(basis.all::add);
        basis.all.addAll(booked.also());
        basis.add(booked.booking().target());
        basis.add(booked.booking().surgeon());
        booked.eye().ifPresent(basis::eye);
        booked.fellow().flatMap(Eye::biometry).ifPresent(basis::biometry);
        booked.fellow().ifPresent(fellow -> {
            basis.add(fellow.surprise());
            basis.add(fellow.other().refraction());
        });
        made.lens().ifPresent(plan -> plan.kit()
                .all()
                .forEach(each -> basis.all.add(each.model().evidence())));
        made.theatre().evidence().forEach(basis.all::add);
        findings.forEach(finding -> basis.all.addAll(finding.evidence()));
        return basis.all.stream()
                .map(evidence -> evidence.at(""))
                .distinct()
                .sorted()
                .toList();
    }

    private void eye(Eye eye) {
        eye.biometry().ifPresent(this::biometry);
        eye.history().entries().stream().map(History.Entry::evidence).forEach(all::add);
        eye.surgery().stream().map(EyeSurgery::evidence).forEach(all::add);
        add(eye.pupil());
        add(eye.other().refraction());
        add(eye.other().cornealScatter());
        add(eye.other().daysWithoutSoftLenses());
        add(eye.other().daysWithoutRigidLenses());
        eye.other().beforeLaser().ifPresent(before -> {
            all.add(before.power().evidence());
            all.add(before.refraction().evidence());
            all.add(before.refractionAfter().evidence());
        });
        eye.other().deviceReports().forEach(report -> all.add(report.power().evidence()));
    }

    private void biometry(Biometry biometry) {
        all.add(biometry.axialLength().evidence());
        all.add(biometry.keratometry().evidence());
        add(biometry.details().anteriorChamberDepth());
        add(biometry.details().lensThickness());
        add(biometry.details().lengthScatter());
        add(biometry.details().lengthSignal());
        add(biometry.details().soundVelocity());
    }

    private void add(Optional<? extends Measured<?>> measured) {
        measured.map(Measured::evidence).ifPresent(all::add);
    }
}

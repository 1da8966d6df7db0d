package org.lensward.bench;

import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.lensward.finding.Evidence;
import org.lensward.optics.EyeShape;
import org.lensward.optics.LensConstants;
import org.lensward.quantity.Degrees;
import org.lensward.quantity.Dioptres;
import org.lensward.quantity.Millimetres;
import org.lensward.quantity.PureNumber;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.State;

/** One eye with its lens; fields are not final, so that nothing is computed ahead of the measurement. */
@State(Scope.Thread)
public class Theatre {

    EyeShape shape = new EyeShape(Millimetres.of(23.71), Millimetres.of(7.72), Optional.of(Millimetres.of(3.12)));
    LensConstants constants = LensConstants.ofAConstant(PureNumber.of(118.7));
    Evidence evidence = new Evidence("Observation/eye-1", "1", "value");
    Dioptres target = Dioptres.of(-0.25);
    Dioptres astigmatism = Dioptres.of(1.75);
    Degrees steep = Degrees.of(97);
    List<Dioptres> cylinders = List.of(1.0, 1.5, 2.25, 3.0, 3.75, 4.5, 5.25, 6.0).stream()
            .map(Dioptres::of)
            .toList();
    List<Dioptres> labels = IntStream.range(0, 7)
            .mapToObj(step -> Dioptres.of(19.5 + step / 2.0))
            .toList();
}

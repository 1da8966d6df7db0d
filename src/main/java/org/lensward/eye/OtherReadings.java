package org.lensward.eye;

import java.util.List;
import java.util.Optional;
import org.lensward.quantity.Dioptres;
import org.lensward.quantity.PureNumber;

/**
 * What else was recorded of an eye, for the plans that ask for it.
 *
 * @param refraction its spherical equivalent at the spectacle plane now
 * @param beforeLaser figures from before its cornea was reshaped
 * @param deviceReports powers that the measuring device computed
 * @param cornealScatter standard deviation of its keratometer readings
 * @param daysWithoutSoftLenses days since soft contact lenses were last worn, when it was measured
 * @param daysWithoutRigidLenses likewise for rigid ones
 */
public record OtherReadings(
        Optional<Measured<Dioptres>> refraction,
        Optional<BeforeLaser> beforeLaser,
        List<DeviceReport> deviceReports,
        Optional<Measured<Dioptres>> cornealScatter,
        Optional<Measured<PureNumber>> daysWithoutSoftLenses,
        Optional<Measured<PureNumber>> daysWithoutRigidLenses) {

    public OtherReadings {
        deviceReports = List.copyOf(deviceReports);
    }

    /** Nothing recorded of how the cornea was measured. */
    public OtherReadings(
            Optional<Measured<Dioptres>> refraction,
            Optional<BeforeLaser> beforeLaser,
            List<DeviceReport> deviceReports) {
        this(refraction, beforeLaser, deviceReports, Optional.empty(), Optional.empty(), Optional.empty());
    }

    public static OtherReadings none() {
        return new OtherReadings(Optional.empty(), Optional.empty(), List.of());
    }
}

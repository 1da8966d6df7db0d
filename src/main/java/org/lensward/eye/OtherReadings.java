package org.lensward.eye;

import java.util.List;
import java.util.Optional;
import org.lensward.quantity.Dioptres;

/**
 * What else was recorded of an eye, for the plans that ask for it.
 *
 * @param refraction its spherical equivalent at the spectacle plane now
 * @param beforeLaser figures from before its cornea was reshaped
 * @param deviceReports powers that the measuring device computed
 */
public record OtherReadings(
        Optional<Measured<Dioptres>> refraction, Optional<BeforeLaser> beforeLaser, List<DeviceReport> deviceReports) {

    public OtherReadings {
        deviceReports = List.copyOf(deviceReports);
    }

    public static OtherReadings none() {
        return new OtherReadings(Optional.empty(), Optional.empty(), List.of());
    }
}

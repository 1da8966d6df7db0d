package org.lensward.eye;

import org.lensward.quantity.Dioptres;

/**
 * A lens power that the measuring device computed by a method of its own. It is shown and compared, never recomputed.
 *
 * @param method what the device calls it
 * @param lens the model it was computed for, as the record refers to it
 * @param power the power it gives for the target it was told
 */
public record DeviceReport(String method, String lens, Measured<Dioptres> power) {}

package org.lensward.eye;

import java.time.LocalDate;
import java.util.Optional;
import org.lensward.finding.Evidence;

/**
 * An operation the eye has had.
 *
 * @param words what the record calls it
 * @param performedOn the day, where it is recorded
 * @param evidence where it stands
 */
public record EyeSurgery(String words, Optional<LocalDate> performedOn, Evidence evidence) {}

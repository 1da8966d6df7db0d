package org.lensward.check;

/**
 * What the record says now, at the moment of a step.
 *
 * @param fingerprint of the plan as the record would have it planned now
 * @param place on the operating list, such as {@code 2 at 09:30}; empty where there is no list
 */
public record Standing(String fingerprint, String place) {}

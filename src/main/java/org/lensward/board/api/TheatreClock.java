package org.lensward.board.api;

import java.time.Clock;

/**
 * The time at the operating table, by which an operation's day and an expiry are judged. It is the server's own, never what a caller
 * states; only the demo, whose theatre day is made up, has it stand on that day.
 *
 * @param clock in the hospital's zone
 */
public record TheatreClock(Clock clock) {}

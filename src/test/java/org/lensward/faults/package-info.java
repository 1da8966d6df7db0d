/** A record that misbehaves, and what becomes of the bookings. */
package org.lensward.faults;

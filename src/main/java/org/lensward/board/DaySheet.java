package org.lensward.board;

import java.util.List;
import java.util.Map;
import org.lensward.plan.order.SuggestedTurn;
import org.lensward.risk.preparation.BringList;

/**
 * One theatre's day: in which order to operate, and what to bring.
 *
 * @param day date, as the bookings have it
 * @param theatre where, as the appointments have it
 * @param turns the suggested order
 * @param bring everything to have ready for the eyes that have a lens planned, summed
 * @param lenses every lens of every kit, summed
 */
public record DaySheet(
        String day, String theatre, List<SuggestedTurn> turns, BringList bring, Map<String, Integer> lenses) {}

package org.lensward.board.bank;

import jakarta.servlet.http.HttpServletResponse;
import java.time.Clock;
import java.time.LocalDate;
import java.time.format.DateTimeFormatter;
import java.time.format.DateTimeParseException;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.hl7.fhir.r4.model.Bundle;
import org.hl7.fhir.r4.model.OperationOutcome.IssueType;
import org.jspecify.annotations.Nullable;
import org.lensward.board.api.BankApi;
import org.lensward.board.api.BankDesk;
import org.lensward.board.api.Found;
import org.lensward.board.api.Refusal;
import org.lensward.board.page.Page;
import org.lensward.board.store.StoreState;
import org.lensward.board.store.StoreWatch;
import org.lensward.lens.stock.LensKind;
import org.lensward.lens.stock.LensUnit;
import org.lensward.lens.stock.MovementKind;
import org.lensward.record.Shelf;
import org.lensward.record.UnreadableRecord;
import org.lensward.record.bank.UnitEvent;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.ModelAttribute;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;

/** One carton: what it is, where it is, what happened to it, and what a stock person does with it. */
@Page
public final class CartonPage {

    private static final DateTimeFormatter AT = DateTimeFormatter.ofPattern("d MMM yyyy HH:mm", Locale.UK);

    private final BankDesk bank;
    private final StoreWatch watch;
    private final SheetMaker maker;
    private final Clock clock;

    public CartonPage(BankDesk bank, StoreWatch watch, SheetMaker maker, Clock clock) {
        this.bank = bank;
        this.watch = watch;
        this.maker = maker;
        this.clock = clock;
    }

    /**
     * A filled-in form.
     *
     * @param version of the carton that was looked at
     * @param taker booking and day
     * @param reason why
     * @param to which store
     */
    public record Form(
            @Nullable String version,
            @Nullable String taker,
            @Nullable String reason,
            @Nullable String to) {

        BankApi.Deed deed(Optional<String> held) {
            Optional<String> chosen = said(taker);
            return new BankApi.Deed(
                    "",
                    chosen.map(each -> each.split(" ", 2)[0]).or(() -> held),
                    chosen.map(Form::day),
                    said(reason),
                    said(to),
                    said(version));
        }

        private static LocalDate day(String taker) {
            try {
                return LocalDate.parse(taker.substring(taker.indexOf(' ') + 1));
            } catch (DateTimeParseException unreadable) {
                throw new UnreadableRecord(IssueType.VALUE, "taker", "Choose for whom it is.");
            }
        }

        private static Optional<String> said(@Nullable String text) {
            return Optional.ofNullable(text).filter(each -> !each.isBlank());
        }

        CartonSheet.Typed typed(String movement) {
            return new CartonSheet.Typed(
                    movement, said(taker).orElse(""), said(reason).orElse(""), said(to).orElse(""));
        }
    }

    @GetMapping("/bank/carton/{unit}")
    String carton(@PathVariable String unit, Model model) {
        model.addAttribute("sheet", sheet(bank.unit(unit), Optional.empty(), List.of(), CartonSheet.Typed.NOTHING));
        return "carton";
    }

    @PostMapping("/bank/carton/{unit}/{movement}")
    String move(
            @PathVariable String unit,
            @PathVariable String movement,
            @ModelAttribute Form form,
            HttpServletResponse response,
            Model model) {
        Optional<String> held = bank.unit(unit).heldFor();
        try {
            LensUnit moved = bank.move(unit, movement, form.deed(held));
            model.addAttribute(
                    "sheet", sheet(moved, Optional.of(done(movement)), List.of(), CartonSheet.Typed.NOTHING));
        } catch (Refusal refused) {
            response.setStatus(refused.status().value());
            List<Found> why = refused.findings().stream().map(Found::of).toList();
            model.addAttribute("sheet", sheet(bank.unit(unit), Optional.empty(), why, form.typed(movement)));
        }
        return "carton :: content";
    }

    private static String done(String movement) {
        return Stream.of(MovementKind.values())
                .filter(each -> each.code().equals(movement))
                .map(MovementKind::done)
                .collect(Collectors.joining());
    }

    /** The page of a carton that was just taken in. */
    CartonSheet received(LensUnit unit) {
        return sheet(unit, Optional.of(MovementKind.GOODS_IN.done()), List.of(), CartonSheet.Typed.NOTHING);
    }

    private CartonSheet sheet(LensUnit unit, Optional<String> done, List<Found> refused, CartonSheet.Typed typed) {
        Optional<StoreState> state = watch.known();
        Names names = state.map(maker::names).orElseGet(() -> new Names(new Shelf(new Bundle())));
        return new CartonSheet(
                maker.lines(names).line(unit),
                bank.history(unit.evidence().resource()).stream()
                        .map(event -> happened(event, names))
                        .toList(),
                takers(unit, state, names),
                names.places().stream()
                        .filter(place -> !place.id().equals(unit.location()))
                        .toList(),
                done,
                refused,
                typed);
    }

    private static List<CartonSheet.Taker> takers(LensUnit unit, Optional<StoreState> state, Names names) {
        return state.flatMap(StoreState::checked).stream()
                .flatMap(checked -> checked.sheet().needs().stream())
                .filter(need -> LensKind.of(need).equals(LensKind.of(unit)))
                .map(need -> new CartonSheet.Taker(
                        Names.id(need.booking()),
                        names.patient(need.booking()),
                        need.role().code().replace('-', ' '),
                        need.day()))
                .toList();
    }

    private CartonSheet.Happened happened(UnitEvent event, Names names) {
        return new CartonSheet.Happened(
                AT.format(event.at().atZone(clock.getZone())),
                event.done(),
                event.who(),
                Stream.of(
                                event.reason(),
                                event.booking().map(booking -> "for " + names.patient(booking)),
                                event.store().map(store -> "to " + names.place(store)))
                        .flatMap(Optional::stream)
                        .collect(Collectors.joining("; ")));
    }
}

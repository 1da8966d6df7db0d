package org.lensward.board.bank;

import jakarta.servlet.http.HttpServletResponse;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import org.lensward.board.api.BankDesk;
import org.lensward.board.page.Page;
import org.lensward.board.store.StockDesk;
import org.lensward.board.store.StoreState;
import org.lensward.board.store.StoreWatch;
import org.lensward.lens.stock.LensKind;
import org.lensward.lens.stock.Order;
import org.springframework.http.HttpStatus;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;

/** What lies where, what is short, who is to have what, what goes out of date. */
@Page
public final class BankPage {

    private final StoreWatch watch;
    private final StockDesk stock;
    private final BankDesk bank;
    private final SheetMaker maker;

    public BankPage(StoreWatch watch, StockDesk stock, BankDesk bank, SheetMaker maker) {
        this.watch = watch;
        this.stock = stock;
        this.bank = bank;
        this.maker = maker;
    }

    @GetMapping("/bank")
    String bank(@RequestParam Optional<String> site, Model model) {
        return shown(model, site).map(any -> "bank").orElse("bank-reading");
    }

    /** What changed since the page was drawn; nothing where nothing did. */
    @GetMapping("/bank/news")
    String news(
            @RequestParam Optional<String> site, @RequestParam String mark, HttpServletResponse response, Model model) {
        Optional<StoreState> state = watch.look();
        state.ifPresent(each -> response.setHeader(
                "HX-Trigger", "{\"as-of\": \"" + maker.time(each.standing().asOf()) + "\"}"));
        if (state.filter(each -> !each.mark().equals(mark)).isEmpty()) {
            response.setStatus(HttpStatus.NO_CONTENT.value());
            return "bank-reading";
        }
        return shown(model, site).map(any -> "bank :: sheet").orElse("bank-reading");
    }

    private Optional<StoreState> shown(Model model, Optional<String> site) {
        Optional<StoreState> state = watch.look();
        state.ifPresent(each -> model.addAttribute("sheet", maker.sheet(each, site.filter(name -> !name.isEmpty()))));
        return state;
    }

    @GetMapping("/bank/kind")
    String kind(
            @RequestParam("model") String lens,
            @RequestParam String power,
            @RequestParam Optional<String> cylinder,
            Model model) {
        LensKind kind = new KindAddress(lens, power, cylinder.orElse("")).kind();
        return list(
                model, "Cartons of one kind", state -> maker.names(state).lens(kind), state -> maker.kind(state, kind));
    }

    @GetMapping("/bank/expiring")
    String expiring(Model model) {
        return list(model, "Going out of date", state -> "Going out of date", maker::expiring);
    }

    private String list(
            Model model,
            String title,
            Function<StoreState, String> heading,
            Function<StoreState, List<CartonLine>> lines) {
        Optional<StoreState> state = watch.look();
        state.ifPresent(each -> {
            model.addAttribute("title", title);
            model.addAttribute("heading", heading.apply(each));
            model.addAttribute("cartons", lines.apply(each));
            model.addAttribute("asOf", maker.time(each.standing().asOf()));
        });
        return state.map(any -> "bank-list").orElse("bank-reading");
    }

    /** Orders what is short, on a look of its own: what was ordered before is not ordered again. */
    @PostMapping("/bank/orders")
    String order(@RequestParam int days, Model model) {
        List<Order> orders = stock.order(stock.check(stock.ahead(days), bank.all()));
        watch.recheck();
        model.addAttribute("ordered", orders.stream().mapToInt(Order::count).sum());
        return "bank :: ordered";
    }
}

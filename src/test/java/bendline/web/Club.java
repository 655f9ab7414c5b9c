package bendline.web;

import java.util.HashMap;
import java.util.Map;
import org.openqa.selenium.By;
import org.openqa.selenium.Cookie;
import org.openqa.selenium.Keys;

/** Members of a club at one browser, who change places by their cookies. */
final class Club {

    private static final String PASSWORD = "a long password";

    private final Browser browser;
    private final Served served;
    private final Map<String, Cookie> cookies = new HashMap<>();

    Club(Browser browser, Served served) {
        this.browser = browser;
        this.served = served;
    }

    /** The path that the first coach is given when the server starts. */
    String firstInvitation() {
        return served.said.stream()
                .filter(l -> l.contains("/join?code="))
                .map(l -> l.replaceFirst(".*/join", "/join"))
                .findFirst()
                .orElseThrow();
    }

    /** A coach, who is signed in, invites a pupil. */
    String invitation() {
        browser.driver.get(served.address + "/club");
        browser.driver.findElements(By.cssSelector("form.inline button")).stream()
                .filter(b -> b.getText().equals("Invite a pupil"))
                .findFirst()
                .orElseThrow()
                .sendKeys(Keys.ENTER);
        return browser.find("#invitation").getAttribute("href").replaceFirst(".*/join", "/join");
    }

    /** Somebody new joins by keyboard and stays signed in; the name by which they sign in again. */
    String join(String invitation, String name) {
        browser.driver.manage().deleteAllCookies();
        browser.driver.get(served.address + invitation);
        browser.find("#name").sendKeys(name);
        browser.find("#password").sendKeys(PASSWORD, Keys.ENTER);
        browser.waitFor("document.querySelector('header').textContent.includes('" + name + "')", 20);
        cookies.put(name, browser.driver.manage().getCookieNamed("bendline"));
        return name;
    }

    void signIn(String name) {
        browser.driver.manage().deleteAllCookies();
        browser.driver.manage().addCookie(cookies.get(name));
    }
}

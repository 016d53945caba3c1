import { mount } from "svelte";
import App from "./App.svelte";
import "./style/ink.css";

const target = document.getElementById("page");
if (target === null) throw new Error("index.html has no element #page");
mount(App, { target });
